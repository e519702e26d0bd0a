#include "mesh/Bands.hpp"

#include <algorithm>
#include <optional>
#include <span>

#include "mesh/Delaunay.hpp"
#include "mesh/Ears.hpp"
#include "mesh/Monotone.hpp"

namespace sagitta {
namespace {

struct Side {
  BandPoint a, b;
};

/// A loop's segment where it leaves a line: which way it leans and whether the face begins to the east of it.
struct Leaving {
  BandPoint on;
  Point away;  ///< from the line into the band
  bool begins = false;
};

/// The lines that a face reaches.
std::span<const double> lines_within(const std::vector<std::vector<BandPoint>>& loops,
                                     const std::vector<double>& lines) {
  double low = 1e300, high = -1e300;
  for (const auto& loop : loops)
    for (const BandPoint& at : loop) low = std::min(low, at.p.y), high = std::max(high, at.p.y);
  const auto first = std::lower_bound(lines.begin(), lines.end(), low);
  return {first, std::max(first, std::upper_bound(lines.begin(), lines.end(), high))};
}

class Bands {
 public:
  Bands(const std::vector<std::vector<BandPoint>>& loops, const std::vector<double>& lines,
        const std::function<std::vector<BandPoint>(const BandPoint&, const BandPoint&)>& between, double stretch)
      : lines_(lines_within(loops, lines)),
        between_(between),
        stretch_(stretch),
        sides_(lines_.size() + 1),
        on_line_(lines_.size()) {
    for (const auto& loop : loops) sort_in(loop);
  }

  std::vector<std::array<int, 3>> run() {
    for (std::size_t i = 0; i < lines_.size(); ++i) lay_line(i);
    std::size_t corners = 0;
    for (const auto& sides : sides_) corners += sides.size();
    triangles_.reserve(corners);
    for (const auto& sides : sides_) triangulate(sides);
    return std::move(triangles_);
  }

 private:
  /// Twice the number of lines below a height, and one more on a line.
  std::size_t level(double y) const {
    const auto line = std::lower_bound(lines_.begin(), lines_.end(), y);
    return 2 * static_cast<std::size_t>(line - lines_.begin()) + (line != lines_.end() && *line == y);
  }

  void sort_in(const std::vector<BandPoint>& loop) {
    if (loop.empty()) return;
    std::size_t from = level(loop.back().p.y);
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const std::size_t to = level(loop[i].p.y);
      if (to % 2 == 1) on_line_[to / 2].push_back(loop[i]);
      const bool along_line = from == to && to % 2 == 1;
      if (!along_line)
        sides_[(std::min(from, to) + 1) / 2].push_back({loop[i == 0 ? loop.size() - 1 : i - 1], loop[i]});
      from = to;
    }
  }

  /// Both bands that meet at a line get its stretches inside the face as sides.
  void lay_line(std::size_t i) {
    std::vector<BandPoint>& points = on_line_[i];
    std::sort(points.begin(), points.end(), [](const BandPoint& a, const BandPoint& b) { return a.p.x < b.p.x; });
    points.erase(std::unique(points.begin(), points.end(), [](const auto& a, const auto& b) { return a.id == b.id; }),
                 points.end());
    const auto above = stretches(sides_[i + 1], lines_[i], true);
    const auto below = stretches(sides_[i], lines_[i], false);
    filled_.assign(points.size(), std::nullopt);
    for (const Side& stretch : above) fill(points, stretch, i + 1, true);
    for (const Side& stretch : below) fill(points, stretch, i, false);
  }

  void fill(const std::vector<BandPoint>& points, const Side& stretch, std::size_t band, bool eastward) {
    auto at = std::lower_bound(points.begin(), points.end(), stretch.a.p.x,
                               [](const BandPoint& p, double x) { return p.p.x < x; });
    while (at != points.end() && at->id != stretch.a.id) ++at;
    for (; at != points.end() && at->id != stretch.b.id; ++at) {
      if (at + 1 == points.end()) break;
      auto& inner = filled_[static_cast<std::size_t>(at - points.begin())];
      if (!inner) inner = between_(*at, *(at + 1));
      BandPoint last = *at;
      const auto add = [&](const BandPoint& next) {
        sides_[band].push_back(eastward ? Side{last, next} : Side{next, last});
        last = next;
      };
      for (const BandPoint& next : *inner) add(next);
      add(*(at + 1));
    }
  }

  static std::vector<Side> stretches(const std::vector<Side>& sides, double line, bool above) {
    std::vector<Leaving> leaving;
    for (const Side& side : sides) {
      if ((side.a.p.y == line) == (side.b.p.y == line)) continue;
      const bool starts = side.a.p.y == line;
      const BandPoint& on = starts ? side.a : side.b;
      const Point away = (starts ? side.b.p : side.a.p) - on.p;
      leaving.push_back({on, away, above ? !starts : starts});  // the face lies left of the side
    }
    std::sort(leaving.begin(), leaving.end(), [&](const Leaving& a, const Leaving& b) {
      if (a.on.p.x != b.on.p.x) return a.on.p.x < b.on.p.x;
      const double turn = cross(a.away, b.away);
      return above ? turn < 0 : turn > 0;
    });
    std::vector<Side> found;
    const Leaving* begin = nullptr;
    for (const Leaving& l : leaving) {
      if (l.begins) {
        begin = &l;
      } else if (begin) {
        if (begin->on.id != l.on.id) found.push_back({begin->on, l.on});
        begin = nullptr;
      }
    }
    return found;
  }

  /// The loops that the sides of a band make, each begun at its least id.
  void triangulate(const std::vector<Side>& sides) {
    from_.clear();
    for (std::size_t i = 0; i < sides.size(); ++i) from_.push_back({sides[i].a.id, i});
    std::sort(from_.begin(), from_.end());
    is_used_.assign(sides.size(), false);
    for (const auto& [id, first] : from_) {
      if (is_used_[first]) continue;
      loop_.assign(1, first);
      is_used_[first] = true;
      while (sides[loop_.back()].b.id != sides[first].a.id)
        if (!go_on(sides)) break;
      triangulate_loop(sides);
    }
  }

  /// Adds the side that follows the loop's last one; false where there is none.
  bool go_on(const std::vector<Side>& sides) {
    const Side& last = sides[loop_.back()];
    const std::pair<int, std::size_t>* found = nullptr;
    for (auto it = std::lower_bound(from_.begin(), from_.end(), std::pair{last.b.id, std::size_t{0}});
         it != from_.end() && it->first == last.b.id; ++it)
      if (!is_used_[it->second] && (!found || sharper(last, sides[it->second], sides[found->second]))) found = &*it;
    if (!found) return false;
    loop_.push_back(found->second);
    is_used_[found->second] = true;
    return true;
  }

  void triangulate_loop(const std::vector<Side>& sides) {
    polygon_.clear();
    for (const std::size_t i : loop_) polygon_.push_back(sides[i].a.p);
    std::vector<std::array<int, 3>> parts = cut_monotone(polygon_);
    if (parts.empty()) parts = cut_ears(polygon_);
    for (Point& p : polygon_) p.x *= stretch_;
    flip_to_delaunay(polygon_, parts);
    for (const auto& [a, b, c] : parts)
      triangles_.push_back({sides[loop_[a]].a.id, sides[loop_[b]].a.id, sides[loop_[c]].a.id});
  }

  /// Which way on keeps the face to the left: the first clockwise from the way back.
  static bool sharper(const Side& arrived, const Side& one, const Side& other) {
    const Point back = arrived.a.p - arrived.b.p;
    return clockwise(back, one.b.p - one.a.p) < clockwise(back, other.b.p - other.a.p);
  }

  std::span<const double> lines_;
  const std::function<std::vector<BandPoint>(const BandPoint&, const BandPoint&)>& between_;
  double stretch_;
  std::vector<std::vector<Side>> sides_;  ///< one list a band, from below the first line upward
  std::vector<std::vector<BandPoint>> on_line_;
  std::vector<std::array<int, 3>> triangles_;

  // Of the line, the band or the loop at work; members so that their memory is used again.
  std::vector<std::optional<std::vector<BandPoint>>> filled_;  ///< between a point of the line and the next
  std::vector<std::pair<int, std::size_t>> from_;              ///< the band's sides by the id that they leave
  std::vector<bool> is_used_;
  std::vector<std::size_t> loop_;
  std::vector<Point> polygon_;
};

}  // namespace

std::vector<std::array<int, 3>> triangulate_in_bands(
    const std::vector<std::vector<BandPoint>>& loops, const std::vector<double>& lines,
    const std::function<std::vector<BandPoint>(const BandPoint&, const BandPoint&)>& between, double stretch) {
  return Bands(loops, lines, between, stretch).run();
}

}  // namespace sagitta
