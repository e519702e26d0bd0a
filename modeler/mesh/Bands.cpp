#include "mesh/Bands.hpp"

#include <algorithm>
#include <map>

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

class Bands {
 public:
  Bands(const std::vector<std::vector<BandPoint>>& loops, const std::vector<double>& lines,
        const std::function<std::vector<BandPoint>(const BandPoint&, const BandPoint&)>& between, double stretch)
      : lines_(lines), between_(between), stretch_(stretch), sides_(lines.size() + 1), on_line_(lines.size()) {
    for (const auto& loop : loops)
      for (std::size_t i = 0; i < loop.size(); ++i) sort_in({loop[i], loop[(i + 1) % loop.size()]});
  }

  std::vector<std::array<int, 3>> run() {
    for (std::size_t i = 0; i < lines_.size(); ++i) lay_line(i);
    std::vector<std::array<int, 3>> triangles;
    for (auto& sides : sides_) triangulate(sides, triangles);
    return triangles;
  }

 private:
  void sort_in(const Side& side) {
    for (const BandPoint& end : {side.a, side.b}) {
      const auto line = std::lower_bound(lines_.begin(), lines_.end(), end.p.y);
      if (line != lines_.end() && *line == end.p.y) on_line_[line - lines_.begin()].push_back(end);
    }
    const double low = std::min(side.a.p.y, side.b.p.y), high = std::max(side.a.p.y, side.b.p.y);
    const auto above = std::upper_bound(lines_.begin(), lines_.end(), low);
    const bool along_line = low == high && above != lines_.begin() && *(above - 1) == low;
    if (!along_line) sides_[above - lines_.begin()].push_back(side);
  }

  /// Both bands that meet at a line get its stretches inside the face as sides.
  void lay_line(std::size_t i) {
    std::vector<BandPoint>& points = on_line_[i];
    std::sort(points.begin(), points.end(), [](const BandPoint& a, const BandPoint& b) { return a.p.x < b.p.x; });
    points.erase(std::unique(points.begin(), points.end(), [](const auto& a, const auto& b) { return a.id == b.id; }),
                 points.end());
    const auto above = stretches(sides_[i + 1], lines_[i], true);
    const auto below = stretches(sides_[i], lines_[i], false);
    std::map<std::pair<int, int>, std::vector<BandPoint>> filled;
    const auto fill = [&](const Side& stretch, std::size_t band, bool eastward) {
      auto at = std::lower_bound(points.begin(), points.end(), stretch.a.p.x,
                                 [](const BandPoint& p, double x) { return p.p.x < x; });
      while (at != points.end() && at->id != stretch.a.id) ++at;
      for (; at != points.end() && at->id != stretch.b.id; ++at) {
        if (at + 1 == points.end()) break;
        auto [found, fresh] = filled.try_emplace({at->id, (at + 1)->id});
        if (fresh) found->second = between_(*at, *(at + 1));
        std::vector<BandPoint> run{*at};
        run.insert(run.end(), found->second.begin(), found->second.end());
        run.push_back(*(at + 1));
        for (std::size_t k = 0; k + 1 < run.size(); ++k)
          sides_[band].push_back(eastward ? Side{run[k], run[k + 1]} : Side{run[k + 1], run[k]});
      }
    };
    for (const Side& stretch : above) fill(stretch, i + 1, true);
    for (const Side& stretch : below) fill(stretch, i, false);
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

  void triangulate(std::vector<Side>& sides, std::vector<std::array<int, 3>>& triangles) const {
    std::multimap<int, std::size_t> from;
    for (std::size_t i = 0; i < sides.size(); ++i) from.emplace(sides[i].a.id, i);
    while (!from.empty()) {
      std::vector<std::size_t> loop{from.begin()->second};
      from.erase(from.begin());
      while (sides[loop.back()].b.id != sides[loop.front()].a.id) {
        const auto [low, high] = from.equal_range(sides[loop.back()].b.id);
        if (low == high) break;
        auto best = low;
        for (auto it = std::next(low); it != high; ++it)
          if (sharper(sides[loop.back()], sides[it->second], sides[best->second])) best = it;
        loop.push_back(best->second);
        from.erase(best);
      }
      std::vector<Point> polygon;
      for (const std::size_t i : loop) polygon.push_back(sides[i].a.p);
      std::vector<std::array<int, 3>> parts = cut_monotone(polygon);
      if (parts.empty()) parts = cut_ears(polygon);
      for (Point& p : polygon) p.x *= stretch_;
      flip_to_delaunay(polygon, parts);
      for (const auto& [a, b, c] : parts)
        triangles.push_back({sides[loop[a]].a.id, sides[loop[b]].a.id, sides[loop[c]].a.id});
    }
  }

  /// Which way on keeps the face to the left: the first clockwise from the way back.
  static bool sharper(const Side& arrived, const Side& one, const Side& other) {
    const Point back = arrived.a.p - arrived.b.p;
    return clockwise(back, one.b.p - one.a.p) < clockwise(back, other.b.p - other.a.p);
  }

  const std::vector<double>& lines_;
  const std::function<std::vector<BandPoint>(const BandPoint&, const BandPoint&)>& between_;
  double stretch_;
  std::vector<std::vector<Side>> sides_;  ///< one list a band, from below the first line upward
  std::vector<std::vector<BandPoint>> on_line_;
};

}  // namespace

std::vector<std::array<int, 3>> triangulate_in_bands(
    const std::vector<std::vector<BandPoint>>& loops, const std::vector<double>& lines,
    const std::function<std::vector<BandPoint>(const BandPoint&, const BandPoint&)>& between, double stretch) {
  return Bands(loops, lines, between, stretch).run();
}

}  // namespace sagitta
