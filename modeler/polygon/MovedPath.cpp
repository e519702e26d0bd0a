#include "polygon/MovedPath.hpp"

#include <algorithm>
#include <cmath>

#include "polygon/PolygonFigures.hpp"

namespace sagitta {
namespace {

constexpr double one_point = 0.00002;  // mm; points of a moved path nearer to each other are one

double square(Point a) { return dot(a, a); }

void drop_repeats(Polygon& polygon) {
  constexpr double repeat = 2 / fine_grid.per_mm;
  const auto one = [&](Point a, Point b) { return square(b - a) <= repeat * repeat; };
  polygon.erase(std::unique(polygon.begin(), polygon.end(), one), polygon.end());
  while (polygon.size() > 1 && one(polygon.front(), polygon.back())) polygon.pop_back();
}

/// Whether a path comes back from b along its own way there, to the side from which it is moved away: a slit without
/// width, of which whole numbers leave some.
bool slit(Point a, Point b, Point c, double by) {
  constexpr double least_width = 0.0002;  // mm
  const Point d = b - a, e = c - b;
  const double wide = cross(d, e), along = dot(d, e);
  return along < 0 && (wide > 0) != (by > 0) &&
         wide * wide <= least_width * least_width * std::max(square(d), square(e));
}

/// Takes slits out of a polygon: at their ends nothing tells the moved path which way round to go.
void drop_slits(Polygon& polygon, double by) {
  const std::size_t n = polygon.size();
  if (n < 3) return;
  std::size_t from = 0;
  while (from < n && !slit(polygon[from], polygon[from + 1 < n ? from + 1 : 0],
                           polygon[from + 2 < n ? from + 2 : from + 2 - n], by))
    ++from;
  if (from == n) return;
  Polygon kept;
  kept.reserve(n);
  const auto ends_in_slit = [&](Point next) {
    return kept.size() > 1 && slit(kept[kept.size() - 2], kept.back(), next, by);
  };
  for (const Point p : polygon) {
    while (ends_in_slit(p)) kept.pop_back();
    kept.push_back(p);
  }
  while (kept.size() > 2 && ends_in_slit(kept.front())) kept.pop_back();
  while (kept.size() > 2 && slit(kept.back(), kept[0], kept[1], by)) kept.erase(kept.begin());
  polygon = std::move(kept);
}

/// A moved path as it grows. What an arc of the very radius that it is moved by shrinks to is one point of it.
class MovedPath {
 public:
  explicit MovedPath(std::size_t points) { path_.reserve(points); }
  void add(Point p) {
    const GridPoint own = fine_grid.at(p);
    if (path_.empty() || !near(own, path_.back())) path_.push_back(own);
  }
  /// An arc about p from p + m to p + o.
  void add_round(Point p, Point m, Point o, double turn, double step) {
    const int steps = std::max(1, static_cast<int>(std::ceil(std::abs(turn) / step)));
    const double further = (1 - std::cos(turn / steps / 2)) / 2;
    add(p + m);
    for (int k = 1; k < steps; ++k) add(p + (1 + further) * turned(m, turn * k / steps));
    add(p + o);
  }
  GridPath closed() {
    while (path_.size() > 1 && near(path_.front(), path_.back())) path_.pop_back();
    return std::move(path_);
  }

 private:
  static bool near(const GridPoint& a, const GridPoint& b) {
    return std::max(std::abs(a.x - b.x), std::abs(a.y - b.y)) <=
           static_cast<std::int64_t>(one_point * fine_grid.per_mm);
  }
  GridPath path_;
};

}  // namespace

GridPath moved_out(const Polygon& drawn, double by) {
  Polygon polygon = drawn;
  drop_repeats(polygon);
  drop_slits(polygon, by);
  drop_repeats(polygon);
  const std::size_t n = polygon.size();
  if (n < 3) return {};
  // The arcs' points lie as far outside of them as their chords lie inside.
  const double radius = std::abs(by), step = 2 * std::acos(std::max(0.0, 1 - 2 * tolerance::offset_chords / radius));
  const auto least_cosine = [&](double off) { return 2 / square({1 + off / radius, 0}) - 1; };
  // Greater turns of outer corners need an arc; greater ones of inner corners are none of an arc of about this radius.
  const double mitre = least_cosine(tolerance::offset_chords), smooth = least_cosine(2 * tolerance::offset_chords);
  // The winding number of the path about a point is that of the outline plus the number of parts of the outline within
  // `radius` of the point: at least one for each part, unless all of the outline is that near.
  const Box box = bounds(polygon);
  const bool small = std::max(box.high.x - box.low.x, box.high.y - box.low.y) <= 2 * radius;
  MovedPath path(2 * n);
  double before = std::sqrt(square(polygon[0] - polygon[n - 1]));
  Point d = (1 / before) * (polygon[0] - polygon[n - 1]);
  for (std::size_t i = 0; i < n; ++i) {
    const Point p = polygon[i], side = polygon[i + 1 < n ? i + 1 : 0] - p;
    const double after = std::sqrt(square(side));
    const Point e = (1 / after) * side;
    const Point m = -by * left_of(d), o = -by * left_of(e);
    const double sine = cross(d, e), cosine = dot(d, e);
    const bool outer = (sine > 0) == (by > 0);
    // At an inner corner the moved sides meet |by| tan(turn / 2) from their ends.
    const bool room = !outer && cosine > -0.98 && 2 * radius * std::abs(sine) <= std::min(before, after) * (1 + cosine);
    if (room || cosine >= (outer ? mitre : small ? 1 : smooth)) {
      path.add(p + (1 / (1 + cosine)) * (m + o));
    } else if (outer) {
      path.add_round(p, m, o, std::atan2(sine, cosine), step);
    } else {
      path.add(p + m);
      if (small) path.add(p);
      path.add(p + o);
    }
    d = e;
    before = after;
  }
  return path.closed();
}

}  // namespace sagitta
