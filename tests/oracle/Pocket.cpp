#include "oracle/Pocket.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sagitta::oracle {
namespace {

constexpr double pi = std::numbers::pi;

/// Corners of the piece about the origin, counter-clockwise, before it is turned.
std::vector<Point> corners_of(const Inlay& inlay) {
  const double a = inlay.along.value_or(0) / 2, c = inlay.across.value_or(0) / 2;
  if (inlay.shape == InlayShape::diamond) return {{-a, 0}, {0, -c}, {a, 0}, {0, c}};
  if (inlay.shape == InlayShape::block) return {{-a, -c}, {a, -c}, {a, c}, {-a, c}};
  const double n = inlay.across_nut.value_or(0) / 2, h = inlay.across_heel.value_or(0) / 2;
  return {{-a, -n}, {a, -h}, {a, h}, {-a, n}};
}

/// The polygon with every side moved in by `by`; empty when nothing is left.
std::vector<Point> shrunk(const std::vector<Point>& polygon, double by) {
  std::vector<Point> left = polygon;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    const Point in = by * left_of(unit(b - a));
    left = left_part(left, a + in, b + in);
  }
  return left;
}

Loop full_circle(Point centre, double radius) { return {arc(centre, radius, 0, pi), arc(centre, radius, pi, pi)}; }

}  // namespace

std::vector<Point> left_part(const std::vector<Point>& polygon, Point a, Point b) {
  std::vector<Point> kept;
  const Point d = b - a;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point p = polygon[i], q = polygon[(i + 1) % polygon.size()];
    const double sp = cross(d, p - a), sq = cross(d, q - a);
    if (sp >= 0) kept.push_back(p);
    if ((sp > 0 && sq < 0) || (sp < 0 && sq > 0)) kept.push_back(between(p, q, sp / (sp - sq)));
  }
  return kept;
}

Loop polygon_loop(const std::vector<Point>& corners) {
  Loop loop;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point a = corners[i], b = corners[(i + 1) % corners.size()];
    if (distance(a, b) > 0) loop.push_back(line(a, b));
  }
  return loop;
}

Loop grown(const std::vector<Point>& polygon, double radius) {
  if (radius == 0) return polygon_loop(polygon);
  Loop loop;
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point before = polygon[(i + n - 1) % n], here = polygon[i], after = polygon[(i + 1) % n];
    const Point out_in = -radius * left_of(unit(here - before)), out_on = -radius * left_of(unit(after - here));
    const double start = std::atan2(out_in.y, out_in.x);
    const double sweep = std::atan2(cross(out_in, out_on), dot(out_in, out_on));
    CurveSegment corner = arc(here, radius, start, sweep);
    corner.a = here + out_in;
    corner.b = here + out_on;
    if (sweep > 0) loop.push_back(corner);
    loop.push_back(line(here + out_on, after + out_on));
  }
  return loop;
}

Loop pocket_of(const Board& board, const Marker& marker) {
  const Inlay& inlay = board.inlays[static_cast<std::size_t>(marker.inlay)];
  const double clearance = inlay.clearance;
  const double cutter = inlay_cutter_radius(board);
  if (inlay.shape == InlayShape::dot) {
    if (inlay.diameter / 2 < cutter) return {};
    return full_circle(marker.centre, inlay.diameter / 2 + clearance);
  }
  std::vector<Point> corners = corners_of(inlay);
  if (cutter > 0) corners = shrunk(corners, cutter);
  if (corners.empty()) return {};
  const double turn = (board.hand == Hand::left ? -1 : 1) * inlay.turn_degrees * pi / 180;
  const Point to_x = inlay.turn_degrees == 0 ? Point{1, 0} : turned({1, 0}, turn);
  for (Point& p : corners) p = marker.centre + p.x * to_x + p.y * left_of(to_x);
  return grown(corners, cutter + clearance);
}

}  // namespace sagitta::oracle
