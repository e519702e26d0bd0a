#include "plane/RoundedPolygon.hpp"

#include <algorithm>
#include <limits>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

Point after(const std::vector<Point>& core, std::size_t i) { return core[(i + 1) % core.size()]; }

/// Unit normal of the side that starts at core[i], pointing out of the polygon.
Point outward(const std::vector<Point>& core, std::size_t i) { return unit(-1.0 * left_of(after(core, i) - core[i])); }

double reach(const std::vector<Point>& core, Point n) {
  double most = dot(n, core.front());
  for (Point p : core) most = std::max(most, dot(n, p));
  return most;
}

/// Widest gap that a side of `of` leaves to `other`; negative when every side has part of `other` behind it.
double side_gap(const std::vector<Point>& of, const std::vector<Point>& other) {
  double widest = -std::numeric_limits<double>::infinity();
  if (of.size() < 2) return widest;
  for (std::size_t i = 0; i < of.size(); ++i) {
    const Point n = outward(of, i);
    widest = std::max(widest, -reach(other, -1.0 * n) - dot(n, of[i]));
  }
  return widest;
}

double point_to_segment(Point p, Point a, Point b) {
  const Point along = b - a;
  const double square = dot(along, along);
  if (square == 0) return distance(p, a);
  return distance(p, between(a, b, std::clamp(dot(p - a, along) / square, 0.0, 1.0)));
}

/// Least distance from a corner of `corners` to a side of `sides`.
double corner_distance(const std::vector<Point>& corners, const std::vector<Point>& sides) {
  double least = std::numeric_limits<double>::infinity();
  for (Point p : corners)
    for (std::size_t i = 0; i < sides.size(); ++i)
      least = std::min(least, point_to_segment(p, sides[i], after(sides, i)));
  return least;
}

double core_distance(const std::vector<Point>& a, const std::vector<Point>& b) {
  const double gap = std::max(side_gap(a, b), side_gap(b, a));
  if (gap < 0 && std::isfinite(gap)) return gap;
  return std::min(corner_distance(a, b), corner_distance(b, a));
}

/// The part of the polygon with n.p <= limit.
std::vector<Point> clipped(const std::vector<Point>& polygon, Point n, double limit) {
  std::vector<Point> kept;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point p = polygon[i], q = after(polygon, i);
    const double over_p = dot(n, p) - limit, over_q = dot(n, q) - limit;
    if (over_p <= 0) kept.push_back(p);
    if ((over_p < 0 && over_q > 0) || (over_p > 0 && over_q < 0))
      kept.push_back(between(p, q, over_p / (over_p - over_q)));
  }
  return kept;
}

std::vector<Point> inset(const std::vector<Point>& core, double by) {
  if (core.size() < 3) return {};
  std::vector<Point> left = core;
  for (std::size_t i = 0; i < core.size() && !left.empty(); ++i) {
    const Point n = outward(core, i);
    left = clipped(left, n, dot(n, core[i]) - by);
  }
  std::vector<Point> apart;
  for (Point p : left)
    if (apart.empty() || distance(p, apart.back()) > tolerance::same) apart.push_back(p);
  while (apart.size() > 1 && distance(apart.front(), apart.back()) <= tolerance::same) apart.pop_back();
  return apart.size() < 3 ? std::vector<Point>{} : apart;
}

}  // namespace

Loop outline(const RoundedPolygon& shape) {
  const auto& core = shape.core;
  if (core.empty()) return {};
  if (core.size() == 1) return circle(core[0], shape.radius);
  Loop loop;
  for (std::size_t i = 0; i < core.size(); ++i) {
    const std::size_t next = (i + 1) % core.size();
    if (shape.radius <= 0) {
      loop.push_back(line(core[i], core[next]));
      continue;
    }
    const Point out = shape.radius * outward(core, i);
    const Point side_end = core[next] + out;
    const Point side_start = i == 0 ? core[i] + out : loop.back().b;
    const Point corner_end = next == 0 ? loop.front().a : core[next] + shape.radius * outward(core, next);
    loop.push_back(line(side_start, side_end));
    loop.push_back(arc_between(core[next], shape.radius, side_end, corner_end, true));
  }
  return loop;
}

double support(const RoundedPolygon& shape, Point n) { return reach(shape.core, n) + shape.radius; }

double distance(const RoundedPolygon& a, const RoundedPolygon& b) {
  return core_distance(a.core, b.core) - a.radius - b.radius;
}

RoundedPolygon shrunk(const RoundedPolygon& shape, double delta) {
  if (shape.empty()) return shape;
  if (shape.radius >= delta) {
    const double radius = shape.radius - delta;
    return radius == 0 && shape.core.size() < 3 ? RoundedPolygon{} : RoundedPolygon{shape.core, radius};
  }
  return {inset(shape.core, delta - shape.radius), 0};
}

RoundedPolygon turned(const RoundedPolygon& shape, double angle) {
  RoundedPolygon result = shape;
  for (Point& p : result.core) p = turned(p, angle);
  return result;
}

RoundedPolygon moved(const RoundedPolygon& shape, Point by) {
  RoundedPolygon result = shape;
  for (Point& p : result.core) p = p + by;
  return result;
}

RoundedPolygon mirrored(const RoundedPolygon& shape) {
  RoundedPolygon result = shape;
  for (Point& p : result.core) p.y = -p.y;
  std::reverse(result.core.begin(), result.core.end());
  return result;
}

}  // namespace sagitta
