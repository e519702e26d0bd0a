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

/// The arc from p through q to r.
CurveSegment through(Point p, Point q, Point r) {
  const Point u = q - p, v = r - p;
  const double d = 2 * cross(u, v), uu = dot(u, u), vv = dot(v, v);
  if (d == 0) return line(p, r);
  const Point centre{p.x + (v.y * uu - u.y * vv) / d, p.y + (u.x * vv - v.x * uu) / d};
  const Point from = p - centre, to = r - centre;
  CurveSegment all =
      arc(centre, distance(centre, p), std::atan2(from.y, from.x), std::atan2(cross(from, to), dot(from, to)));
  all.a = p, all.b = r;
  return all;
}

/// Turned and moved to its place; mirrored boards are turned the other way.
Loop placed(const Loop& loop, Point centre, double turn) {
  Loop out;
  for (const CurveSegment& s : loop) {
    const auto at = [&](Point p) { return centre + turned(p, turn); };
    if (!s.is_arc()) {
      out.push_back(line(at(s.a), at(s.b)));
      continue;
    }
    CurveSegment all = arc(at(s.centre), s.radius, s.start + turn, s.sweep);
    all.a = at(s.a), all.b = at(s.b);
    out.push_back(all);
  }
  return out;
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
  if (inlay.shape == InlayShape::oval) {
    const double turn = (board.hand == Hand::left ? -1 : 1) * inlay.turn_degrees * pi / 180;
    return placed(oval_outline(*inlay.along / 2, *inlay.across / 2, cutter, clearance), marker.centre, turn);
  }
  std::vector<Point> corners = corners_of(inlay);
  if (cutter > 0) corners = shrunk(corners, cutter);
  if (corners.empty()) return {};
  const double turn = (board.hand == Hand::left ? -1 : 1) * inlay.turn_degrees * pi / 180;
  const Point to_x = inlay.turn_degrees == 0 ? Point{1, 0} : turned({1, 0}, turn);
  for (Point& p : corners) p = marker.centre + p.x * to_x + p.y * left_of(to_x);
  return grown(corners, cutter + clearance);
}

Loop oval_outline(double a, double b, double cutter, double off) {
  if (b > a) return placed(oval_outline(b, a, cutter, off), {}, pi / 2);
  if (cutter > b) return {};
  constexpr int arcs = 32;  // in a quarter
  const double tight = a * cutter / b;
  // Where the normal of an ellipse is `cutter` long down to its longer axis: b sqrt(b^2 cos^2 t + a^2 sin^2 t) / a.
  const double t0 = tight > b ? std::asin(std::sqrt((tight - b) * (tight + b) / ((a - b) * (a + b)))) : 0;
  const auto at = [&](double t) {
    const Point normal = unit({b * std::cos(t), a * std::sin(t)});
    return Point{a * std::cos(t), b * std::sin(t)} + off * normal;
  };
  Loop loop;
  for (const double half : {0.0, pi}) {
    const double from = t0 + half, step = (pi - 2 * t0) / (2 * arcs);
    for (int i = 0; i < 2 * arcs; ++i)
      loop.push_back(through(at(from + i * step), at(from + (i + 0.5) * step), at(from + (i + 1) * step)));
    if (t0 == 0) continue;
    const double c = (half == 0 ? -1 : 1) * (a - b) * (a + b) / a * std::cos(t0);
    loop.push_back(through(at(half + pi - t0), {c + (half == 0 ? -1 : 1) * (cutter + off), 0}, at(half + pi + t0)));
  }
  for (std::size_t i = 0; i < loop.size(); ++i) loop[i].b = loop[(i + 1) % loop.size()].a;
  return loop;
}

Loop cut_outline_of(const Board& board, const sagitta::Cut& cut) {
  double cutter = 0;
  for (const Cutter& each : board.cutters) {
    if (std::find(each.use.begin(), each.use.end(), CutterUse::pocket_clear) == each.use.end()) continue;
    const double wide = each.measured_cut.value_or(each.diameter + each.runout);
    cutter = cutter == 0 ? wide / 2 : std::min(cutter, wide / 2);
  }
  const double sense = board.hand == Hand::left ? -1 : 1;
  const Point centre{cut.at[0], sense * cut.at[1]};
  if (cut.shape == CutShape::dot) return *cut.diameter / 2 < cutter ? Loop{} : full_circle(centre, *cut.diameter / 2);
  const double turn = sense * cut.turn_degrees * pi / 180, a = *cut.along / 2, c = *cut.across / 2;
  if (cut.shape == CutShape::oval) return placed(oval_outline(a, c, cutter, 0), centre, turn);
  if (cutter > std::min(a, c)) return {};
  std::vector<Point> corners{{-a, -c}, {a, -c}, {a, c}, {-a, c}};
  if (cutter > 0) corners = shrunk(corners, cutter);
  for (Point& p : corners) p = centre + turned(p, turn);
  return grown(corners, cutter);
}

}  // namespace sagitta::oracle
