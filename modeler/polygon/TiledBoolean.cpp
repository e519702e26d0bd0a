#include "polygon/TiledBoolean.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "plane/ParallelFor.hpp"

namespace sagitta {
namespace {

constexpr std::size_t most_points = 1000;  // of a strip
constexpr std::size_t for_thread = 6000;   // points that are worth another thread
constexpr int most_cuts = 9;               // of strips into strips
constexpr std::int64_t slip = 2;           // whole numbers between the ends that meet on a cut

std::size_t points(const GridPaths& paths) {
  std::size_t sum = 0;
  for (const GridPath& path : paths) sum += path.size();
  return sum;
}

/// An upright cut that meets no point, and how many points of each path lie to its right.
struct Cut {
  std::int64_t x = 0;
  std::vector<std::size_t> subject, clip;
};

/// Counts each path's points to the right of a cut; nothing when one lies on it.
std::optional<std::vector<std::size_t>> counts_right(const GridPaths& paths, std::int64_t cut) {
  std::vector<std::size_t> counts;
  counts.reserve(paths.size());
  std::size_t met = 0;
  for (const GridPath& path : paths) {
    std::size_t right = 0;
    for (const GridPoint& p : path) {
      right += p.x > cut ? 1 : 0;
      met += p.x == cut ? 1 : 0;
    }
    counts.push_back(right);
  }
  if (met > 0) return std::nullopt;
  return counts;
}

/// X of each `step`th point.
std::vector<std::int64_t> sampled(const ClipJob& job, std::size_t step) {
  std::vector<std::int64_t> xs;
  std::size_t next = 0;
  for (const GridPaths* paths : {&job.subject, &job.clip})
    for (const GridPath& path : *paths) {
      for (; next < path.size(); next += step) xs.push_back(path[next].x);
      next -= path.size();
    }
  return xs;
}

/// Where an upright cut about halves the `count` points and meets none of them; nothing when they do not spread.
std::optional<Cut> cut_of(const ClipJob& job, std::size_t count) {
  constexpr std::size_t samples = 255;
  std::vector<std::int64_t> xs = sampled(job, 1 + count / samples);
  const auto middle = xs.begin() + static_cast<std::ptrdiff_t>(xs.size() / 2);
  std::nth_element(xs.begin(), middle, xs.end());
  const auto any = [](const std::vector<std::size_t>& counts) {
    return std::any_of(counts.begin(), counts.end(), [](std::size_t n) { return n > 0; });
  };
  for (std::int64_t x = *middle + 1;; ++x) {
    auto subject = counts_right(job.subject, x), clip = counts_right(job.clip, x);
    if (!subject || !clip) continue;
    if (!any(*subject) && !any(*clip)) return std::nullopt;
    return Cut{x, std::move(*subject), std::move(*clip)};
  }
}

/// The edge's point on the cut, the same from both sides.
GridPoint crossing(GridPoint a, GridPoint b, std::int64_t cut) {
  if (a.x > b.x) std::swap(a, b);
  const double s = static_cast<double>(cut - a.x) / static_cast<double>(b.x - a.x);
  return {cut, a.y + static_cast<std::int64_t>(std::llround(s * static_cast<double>(b.y - a.y)))};
}

/// A path parted by the cut; `right` of its points lie to the right.
void add_parts(const GridPath& path, std::int64_t cut, std::size_t right, GridPaths (&sides)[2]) {
  GridPath parts[2];
  const std::size_t room = 16;  // for points on the cut
  parts[0].reserve(path.size() - right + room);
  parts[1].reserve(right + room);
  const auto is_right = [&](const GridPoint& p) { return p.x > cut; };
  for (auto from = path.begin(); from != path.end();) {
    const bool side = is_right(*from);
    const auto to = std::find_if(from + 1, path.end(), [&](const GridPoint& p) { return is_right(p) != side; });
    parts[side].insert(parts[side].end(), from, to);
    const GridPoint& next = to != path.end() ? *to : path.front();
    if (is_right(next) != side)
      for (GridPath& part : parts) part.push_back(crossing(*(to - 1), next, cut));
    from = to;
  }
  for (const int side : {0, 1})
    if (parts[side].size() > 2) sides[side].push_back(std::move(parts[side]));
}

/// What lies to the left of the cut and to the right, closed along it: paths wind about points of that side as before.
void part(const GridPaths& paths, std::int64_t cut, const std::vector<std::size_t>& right, GridPaths (&sides)[2]) {
  for (std::size_t i = 0; i < paths.size(); ++i) {
    const GridPath& path = paths[i];
    if (right[i] > 0 && right[i] < path.size()) {
      add_parts(path, cut, right[i], sides);
    } else if (path.size() > 2) {
      sides[right[i] > 0 ? 1 : 0].push_back(path);
    }
  }
}

/// Points of a strip's answer that follow each other, from the cut to the cut.
struct Chain {
  const GridPath* path;
  std::size_t first, size;  ///< it may go round the path's end
  bool right;               ///< of which strip
  const GridPoint& at(std::size_t i) const {
    return (*path)[first + i < path->size() ? first + i : first + i - path->size()];
  }
  const GridPoint& front() const { return at(0); }
  const GridPoint& back() const { return at(size - 1); }
};

/// Paths that do not come to the cut are taken out.
void take_apart(GridPaths& paths, std::int64_t cut, bool right, GridPaths& closed, std::vector<Chain>& open) {
  for (GridPath& path : paths) {
    const std::size_t n = path.size();
    const auto next = [&](std::size_t i) { return i + 1 < n ? i + 1 : 0; };
    const auto on_cut = [&](std::size_t i) { return path[i].x == cut && path[next(i)].x == cut; };
    std::size_t first = 0;
    while (first < n && !on_cut(first)) ++first;
    if (first == n) {
      closed.push_back(std::move(path));
      continue;
    }
    std::size_t i = first;
    do {
      i = next(i);
      if (on_cut(i)) continue;
      Chain chain{&path, i, 1, right};
      for (; !on_cut(i); i = next(i)) ++chain.size;
      open.push_back(chain);
    } while (i != first);
  }
}

/// For each chain, the one that goes on where it ends; nothing when they do not fit.
std::optional<std::vector<int>> followers(const std::vector<Chain>& open) {
  const int n = static_cast<int>(open.size());
  std::vector<int> ends(n), starts(n);
  for (int i = 0; i < n; ++i) ends[i] = starts[i] = i;
  const auto end = [&](int i) { return open[i].back().y; };
  const auto start = [&](int i) { return open[i].front().y; };
  std::sort(ends.begin(), ends.end(), [&](int a, int b) { return std::pair(end(a), a) < std::pair(end(b), b); });
  std::sort(starts.begin(), starts.end(),
            [&](int a, int b) { return std::pair(start(a), a) < std::pair(start(b), b); });
  std::vector<int> next(n);
  for (int i = 0; i < n; ++i) {
    if (std::abs(end(ends[i]) - start(starts[i])) > slip) return std::nullopt;
    // Where several meet in one place it is not known which belong together.
    if (i > 0 && end(ends[i]) - end(ends[i - 1]) <= slip) return std::nullopt;
    if (open[ends[i]].right == open[starts[i]].right) return std::nullopt;
    next[ends[i]] = starts[i];
  }
  return next;
}

bool straight(const GridPoint& a, const GridPoint& b, const GridPoint& c) {
  const double x = static_cast<double>(c.x - a.x), y = static_cast<double>(c.y - a.y);
  const double u = static_cast<double>(b.x - a.x), v = static_cast<double>(b.y - a.y);
  return std::abs(x * v - y * u) <= slip * std::sqrt(x * x + y * y) && x * u + y * v > 0;
}

/// Without the point on the cut, where the edge runs straight through it.
void add(const Chain& chain, GridPath& path) {
  std::size_t from = chain.first;
  if (!path.empty()) {
    ++from;
    if (path.size() > 1 && straight(path[path.size() - 2], path.back(), chain.at(1))) path.pop_back();
  }
  const auto begin = chain.path->begin();
  const std::size_t n = chain.path->size(), to = chain.first + chain.size;
  const auto insert = [&](std::size_t first, std::size_t last) {
    path.insert(path.end(), begin + static_cast<std::ptrdiff_t>(first), begin + static_cast<std::ptrdiff_t>(last));
  };
  if (from < n) insert(from, std::min(to, n));
  if (to > n) insert(std::max(from, n) - n, to - n);
}

std::optional<GridPaths> joined(GridPaths left, GridPaths right, std::int64_t cut) {
  GridPaths result;
  std::vector<Chain> open;
  take_apart(left, cut, false, result, open);
  take_apart(right, cut, true, result, open);
  const auto next = followers(open);
  if (!next) return std::nullopt;
  std::vector<char> done(open.size());
  for (int i = 0; i < static_cast<int>(done.size()); ++i) {
    if (done[i]) continue;
    std::size_t size = 0;
    int k = i;
    do size += open[k].size;
    while ((k = (*next)[k]) != i);
    GridPath path;
    path.reserve(size);
    for (; !done[k]; k = (*next)[k]) {
      done[k] = 1;
      add(open[k], path);
    }
    path.pop_back();  // where the first chain began
    if (path.size() > 2 && straight(path.back(), path[0], path[1])) path.erase(path.begin());
    if (path.size() > 2) result.push_back(std::move(path));
  }
  return result;
}

GridPaths solved(const ClipJob& job, int cuts, const Cancel& cancel) {
  if (cancel.wanted()) return {};
  const std::size_t n = points(job.subject) + points(job.clip);
  const auto cut = cuts < most_cuts && n > most_points ? cut_of(job, n) : std::nullopt;
  if (!cut) return clipped(job);
  ClipJob halves[2];
  for (ClipJob& half : halves) half.how = job.how, half.fill = job.fill;
  GridPaths sides[2];
  part(job.subject, cut->x, cut->subject, sides);
  for (const int side : {0, 1}) halves[side].subject = std::exchange(sides[side], {});
  part(job.clip, cut->x, cut->clip, sides);
  for (const int side : {0, 1}) halves[side].clip = std::move(sides[side]);
  GridPaths half[2];
  const auto solve = [&](int side) {
    half[side] = solved(halves[side], cuts + 1, cancel);
    halves[side] = {};
  };
  if (n > for_thread) {
    parallel_for(2, solve);
  } else {
    solve(0);
    solve(1);
  }
  if (auto result = joined(std::move(half[0]), std::move(half[1]), cut->x)) return *result;
  return cancel.wanted() ? GridPaths{} : clipped(job);
}

}  // namespace

GridPaths tiled_boolean(const ClipJob& job, const Cancel& cancel) { return solved(job, 0, cancel); }

}  // namespace sagitta
