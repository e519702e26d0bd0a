#include "inlay/Sweep.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "plane/ParallelFor.hpp"

namespace sagitta {
namespace {

using namespace ClipperLib;

constexpr std::size_t most_points = 1000;  // of a strip
constexpr std::size_t for_thread = 6000;   // points that are worth another thread
constexpr int most_cuts = 9;               // of strips into strips
constexpr cInt slip = 2;                   // units between the ends that meet on a cut

std::size_t points(const Paths& paths) {
  std::size_t sum = 0;
  for (const Path& path : paths) sum += path.size();
  return sum;
}

Paths whole(const ClipJob& job) {
  Clipper clipper;
  clipper.AddPaths(job.subject, ptSubject, true);
  clipper.AddPaths(job.clip, ptClip, true);
  Paths result;
  clipper.Execute(job.how, result, job.fill, job.fill);
  return result;
}

template <class Look>
void each_point(const ClipJob& job, Look look) {
  for (const Paths* paths : {&job.subject, &job.clip})
    for (const Path& path : *paths)
      for (const IntPoint& p : path) look(p.X);
}

/// Where an upright cut about halves the `count` points and meets none of them; nothing when they do not spread.
std::optional<cInt> cut_of(const ClipJob& job, std::size_t count) {
  constexpr std::size_t samples = 255;
  const std::size_t step = 1 + count / samples;
  std::vector<cInt> xs;
  cInt greatest = std::numeric_limits<cInt>::min();
  std::size_t k = 0;
  each_point(job, [&](cInt x) {
    greatest = std::max(greatest, x);
    if (k++ % step == 0) xs.push_back(x);
  });
  const auto middle = xs.begin() + static_cast<std::ptrdiff_t>(xs.size() / 2);
  std::nth_element(xs.begin(), middle, xs.end());
  for (cInt cut = *middle + 1; cut < greatest; ++cut) {
    bool met = false;
    each_point(job, [&](cInt x) { met |= x == cut; });
    if (!met) return cut;
  }
  return std::nullopt;
}

/// The edge's point on the cut, the same from both sides.
IntPoint crossing(IntPoint a, IntPoint b, cInt cut) {
  if (a.X > b.X) std::swap(a, b);
  const double s = static_cast<double>(cut - a.X) / static_cast<double>(b.X - a.X);
  return {cut, a.Y + static_cast<cInt>(std::llround(s * static_cast<double>(b.Y - a.Y)))};
}

/// What lies on one side of the cut, closed along it: paths wind about points of that side as before.
Paths side_of(const Paths& paths, cInt cut, bool right) {
  Paths kept;
  for (const Path& path : paths) {
    Path part;
    for (std::size_t i = 0; i < path.size(); ++i) {
      const IntPoint &p = path[i], &q = path[i + 1 < path.size() ? i + 1 : 0];
      const bool here = (p.X > cut) == right, there = (q.X > cut) == right;
      if (here) part.push_back(p);
      if (here != there) part.push_back(crossing(p, q, cut));
    }
    if (part.size() > 2) kept.push_back(std::move(part));
  }
  return kept;
}

/// Open ends of a strip's answer on the cut.
struct Chains {
  std::vector<Path> chains;
  std::vector<char> right;  ///< of which strip
};

void take_apart(const Paths& paths, cInt cut, bool right, Paths& closed, Chains& open) {
  for (const Path& path : paths) {
    const std::size_t n = path.size();
    const auto on_cut = [&](std::size_t i) { return path[i % n].X == cut && path[(i + 1) % n].X == cut; };
    std::size_t first = 0;
    while (first < n && !on_cut(first)) ++first;
    if (first == n) {
      closed.push_back(path);
      continue;
    }
    for (std::size_t i = first + 1; i <= first + n;) {
      if (on_cut(i)) {
        ++i;
        continue;
      }
      Path chain{path[i % n]};
      for (; !on_cut(i); ++i) chain.push_back(path[(i + 1) % n]);
      open.chains.push_back(std::move(chain));
      open.right.push_back(right);
    }
  }
}

/// For each chain, the one that goes on where it ends; nothing when they do not fit.
std::optional<std::vector<int>> followers(const Chains& open) {
  const int n = static_cast<int>(open.chains.size());
  std::vector<int> ends(n), starts(n);
  for (int i = 0; i < n; ++i) ends[i] = starts[i] = i;
  const auto end = [&](int i) { return open.chains[i].back().Y; };
  const auto start = [&](int i) { return open.chains[i].front().Y; };
  std::sort(ends.begin(), ends.end(), [&](int a, int b) { return std::pair(end(a), a) < std::pair(end(b), b); });
  std::sort(starts.begin(), starts.end(),
            [&](int a, int b) { return std::pair(start(a), a) < std::pair(start(b), b); });
  std::vector<int> next(n);
  for (int i = 0; i < n; ++i) {
    if (std::abs(end(ends[i]) - start(starts[i])) > slip) return std::nullopt;
    // Where several meet in one place it is not known which belong together.
    if (i > 0 && end(ends[i]) - end(ends[i - 1]) <= slip) return std::nullopt;
    if (open.right[ends[i]] == open.right[starts[i]]) return std::nullopt;
    next[ends[i]] = starts[i];
  }
  return next;
}

bool straight(const IntPoint& a, const IntPoint& b, const IntPoint& c) {
  const double x = static_cast<double>(c.X - a.X), y = static_cast<double>(c.Y - a.Y);
  const double u = static_cast<double>(b.X - a.X), v = static_cast<double>(b.Y - a.Y);
  return std::abs(x * v - y * u) <= slip * std::sqrt(x * x + y * y) && x * u + y * v > 0;
}

/// Without the point on the cut, where the edge runs straight through it.
void add(const Path& chain, Path& path) {
  std::size_t from = 0;
  if (!path.empty()) {
    from = 1;
    if (path.size() > 1 && straight(path[path.size() - 2], path.back(), chain[1])) path.pop_back();
  }
  path.insert(path.end(), chain.begin() + static_cast<std::ptrdiff_t>(from), chain.end());
}

std::optional<Paths> joined(const Paths& left, const Paths& right, cInt cut) {
  Paths result;
  Chains open;
  take_apart(left, cut, false, result, open);
  take_apart(right, cut, true, result, open);
  const auto next = followers(open);
  if (!next) return std::nullopt;
  std::vector<char> done(open.chains.size());
  for (int i = 0; i < static_cast<int>(done.size()); ++i) {
    if (done[i]) continue;
    Path path;
    for (int k = i; !done[k]; k = (*next)[k]) {
      done[k] = 1;
      add(open.chains[k], path);
    }
    path.pop_back();  // where the first chain began
    if (path.size() > 2 && straight(path.back(), path[0], path[1])) path.erase(path.begin());
    if (path.size() > 2) result.push_back(std::move(path));
  }
  return result;
}

Paths solved(const ClipJob& job, int cuts, const Cancel& cancel) {
  if (cancel.wanted()) return {};
  const std::size_t n = points(job.subject) + points(job.clip);
  const auto cut = cuts < most_cuts && n > most_points ? cut_of(job, n) : std::nullopt;
  if (!cut) return whole(job);
  Paths half[2];
  const auto side = [&](int right) {
    half[right] = solved({side_of(job.subject, *cut, right), side_of(job.clip, *cut, right), job.how, job.fill},
                         cuts + 1, cancel);
  };
  if (n > for_thread) {
    parallel_for(2, side);
  } else {
    side(0);
    side(1);
  }
  if (auto result = joined(half[0], half[1], *cut)) return *result;
  return cancel.wanted() ? Paths{} : whole(job);
}

}  // namespace

Paths swept(const ClipJob& job, const Cancel& cancel) { return solved(job, 0, cancel); }

}  // namespace sagitta
