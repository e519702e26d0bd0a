#include "artwork/Curve.hpp"

#include <algorithm>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;

/// The angle from vector u to vector v, counter-clockwise positive, in (-pi, pi].
double angle_between(Point u, Point v) { return std::atan2(cross(u, v), dot(u, v)); }

bool is_circle(Point u, Point v) {
  const double radius = std::max(length(u), length(v));
  return std::abs(length(u) - length(v)) <= tolerance::drawn_round * radius &&
         std::abs(dot(u, v)) <= tolerance::drawn_round * radius * radius;
}

EllipseArc image(const EllipseArc& arc, const Affine& frame) {
  return {frame(arc.a),           frame(arc.b), frame(arc.centre), frame.direction(arc.u),
          frame.direction(arc.v), arc.start,    arc.sweep};
}

/// The arc of a circle between the same ends: its centre is moved onto the line that is as far from one as the other.
CurveSegment round_arc(const EllipseArc& arc) {
  const double turn = cross(arc.u, arc.v) > 0 ? 1 : -1;
  Point centre = arc.centre;
  const Point chord = arc.b - arc.a;
  const bool open = length(chord) > tolerance::drawn_round * length(arc.u);
  if (open) {
    const Point across = unit(left_of(chord)), middle = between(arc.a, arc.b, 0.5);
    centre = middle + dot(centre - middle, across) * across;
  }
  const Point from = arc.a - centre;
  double sweep = turn * arc.sweep;
  if (open) {
    const double ends = angle_between(from, arc.b - centre);
    sweep = ends + 2 * pi * std::round((sweep - ends) / (2 * pi));
  }
  return {arc.a, arc.b, centre, length(from), std::atan2(from.y, from.x), sweep};
}

/// How far the usual cubic stands off a unit circle over an angle. OverlaySource: the error of the cubic with handles
/// 4/3 tan(angle/4), largest at about a fifth of the way, (2/27) sin^6(angle/4) / cos^2(angle/4).
double unit_error(double angle) {
  const double s = std::sin(angle / 4), c = std::cos(angle / 4);
  return 2.0 / 27 * std::pow(s, 6) / (c * c);
}

void draw_as_beziers(const EllipseArc& arc, PathLoop& strokes) {
  int count = std::max(1, static_cast<int>(std::ceil(std::abs(arc.sweep) / (pi / 2) - tolerance::same)));
  while (count < 256 && unit_error(std::abs(arc.sweep) / count) > tolerance::drawn_round) ++count;
  const double step = arc.sweep / count, handle = 4.0 / 3 * std::tan(step / 4);
  const auto slope = [&](double t) { return -std::sin(t) * arc.u + std::cos(t) * arc.v; };
  Point at = arc.a;
  for (int i = 0; i < count; ++i) {
    const double t = arc.start + i * step;
    const Point next = i + 1 == count ? arc.b : arc.at(t + step);
    strokes.push_back(Bezier{at, at + handle * slope(t), next - handle * slope(t + step), next});
    at = next;
  }
}

void draw_arc(const EllipseArc& arc, PathLoop& strokes) {
  if (!is_circle(arc.u, arc.v)) return draw_as_beziers(arc, strokes);
  if (arc.a != arc.b) {
    strokes.push_back(round_arc(arc));
    return;
  }
  // a whole circle: two halves, so that both have ends of their own
  EllipseArc half = arc;
  half.sweep = arc.sweep / 2;
  half.b = arc.at(arc.start + half.sweep);
  strokes.push_back(round_arc(half));
  strokes.push_back(round_arc({half.b, arc.b, arc.centre, arc.u, arc.v, arc.start + half.sweep, half.sweep}));
}

int chords(const Bezier& curve, double deviation) {
  // chords of a cubic stand off at most h^2/8 times its second derivative
  const double bend = 6 * std::max(length(curve.a - 2 * curve.c + curve.d), length(curve.c - 2 * curve.d + curve.b));
  return std::clamp(static_cast<int>(std::ceil(std::sqrt(bend / (8 * deviation)))), 1, 2000);
}

int chords(const CurveSegment& segment, double deviation) {
  if (!segment.is_arc()) return 1;
  const double step = 2 * std::acos(std::max(-1.0, 1 - deviation / segment.radius));
  const double count = std::ceil(std::abs(segment.sweep) / std::max(step, tolerance::same));
  return static_cast<int>(std::clamp(count, std::ceil(std::abs(segment.sweep) / (pi / 2)), 2000.0));
}

/// Twice the area between the curve and the origin. OverlaySource: the integral of x dy - y dx over the Bernstein
/// basis.
double twice_area(const Bezier& z) {
  return (6 * cross(z.a, z.c) + 3 * cross(z.a, z.d) + cross(z.a, z.b) + 3 * cross(z.c, z.d) + 3 * cross(z.c, z.b) +
          6 * cross(z.d, z.b)) /
         10;
}

/// Adds the places in (0, 1) where a coordinate of the cubic stands still.
void add_turning_points(double p, double q, double r, double s, std::vector<double>& at) {
  const double a = -p + 3 * q - 3 * r + s, b = 2 * (p - 2 * q + r), c = q - p;
  if (std::abs(a) <= tolerance::same * (std::abs(b) + std::abs(c))) {
    if (b != 0) at.push_back(-c / b);
    return;
  }
  const double root = std::sqrt(std::max(0.0, b * b - 4 * a * c));
  const double sum = -(b + std::copysign(root, b)) / 2;
  at.push_back(sum / a);
  if (sum != 0) at.push_back(c / sum);
}

void add_bounds(const PathSegment& stroke, Box& box) {
  if (const CurveSegment* segment = std::get_if<CurveSegment>(&stroke)) {
    const Box part = bounds(*segment);
    box.add(part.low);
    box.add(part.high);
    return;
  }
  const Bezier& z = std::get<Bezier>(stroke);
  std::vector<double> at{0, 1};
  add_turning_points(z.a.x, z.c.x, z.d.x, z.b.x, at);
  add_turning_points(z.a.y, z.c.y, z.d.y, z.b.y, at);
  for (const double t : at)
    if (t >= 0 && t <= 1) box.add(z.at(t));
}

}  // namespace

EllipseArc ellipse_arc(Point centre, Point u, Point v, double start, double sweep) {
  EllipseArc arc{{}, {}, centre, u, v, start, sweep};
  arc.a = arc.at(start);
  arc.b = std::abs(sweep) > 2 * pi - tolerance::same ? arc.a : arc.at(start + sweep);
  return arc;
}

Curve svg_arc(Point a, Point b, double rx, double ry, double turn, bool large, bool sweep) {
  rx = std::abs(rx);
  ry = std::abs(ry);
  if (rx == 0 || ry == 0) return LineSegment{a, b};
  const Point axis_u = turned({1, 0}, turn), axis_v = left_of(axis_u);
  const Point half = 0.5 * (a - b);
  const double x = dot(half, axis_u) / rx, y = dot(half, axis_v) / ry;  // F.6.5.1, in units of the radii
  const double lambda = x * x + y * y;                                  // F.6.6.2
  if (!(lambda < 1e100)) return LineSegment{a, b};                      // radii that are nothing beside the chord
  if (lambda > 1) {
    rx *= std::sqrt(lambda);
    ry *= std::sqrt(lambda);
  }
  const double shrink = lambda > 1 ? 1 / std::sqrt(lambda) : 1;
  const Point from{x * shrink, y * shrink};
  const double away = std::sqrt(std::max(0.0, 1 / std::min(1.0, lambda) - 1));  // F.6.5.2
  const Point middle = (large == sweep ? -away : away) * Point{from.y, -from.x};
  const Point centre = between(a, b, 0.5) + (middle.x * rx) * axis_u + (middle.y * ry) * axis_v;
  const double start = std::atan2(from.y - middle.y, from.x - middle.x);
  const double end = std::atan2(-from.y - middle.y, -from.x - middle.x);
  double turned_by = std::remainder(end - start, 2 * pi);
  if (sweep && turned_by < 0) turned_by += 2 * pi;
  if (!sweep && turned_by > 0) turned_by -= 2 * pi;
  return EllipseArc{a, b, centre, rx * axis_u, ry * axis_v, start, turned_by};
}

Bezier raised(Point a, Point control, Point b) {
  return {a, between(control, a, 1.0 / 3), between(control, b, 1.0 / 3), b};
}

Point start_of(const PathSegment& stroke) {
  return std::visit([](const auto& part) { return part.a; }, stroke);
}

Point end_of(const PathSegment& stroke) {
  return std::visit([](const auto& part) { return part.b; }, stroke);
}

PathSegment reversed(const PathSegment& stroke) {
  if (const CurveSegment* segment = std::get_if<CurveSegment>(&stroke)) return segment->reversed();
  const Bezier& z = std::get<Bezier>(stroke);
  return Bezier{z.b, z.d, z.c, z.a};
}

CurveSegment arc_through(const CurveSegment& arc, Point end) {
  return round_arc({arc.a, end, arc.centre, {arc.radius, 0}, {0, arc.radius}, arc.start, arc.sweep});
}

void draw(const Curve& curve, const Affine& frame, PathLoop& strokes) {
  if (const LineSegment* segment = std::get_if<LineSegment>(&curve)) {
    const Point a = frame(segment->a), b = frame(segment->b);
    if (a != b) strokes.push_back(line(a, b));
  } else if (const Bezier* z = std::get_if<Bezier>(&curve)) {
    const Bezier moved{frame(z->a), frame(z->c), frame(z->d), frame(z->b)};
    if (moved.a != moved.b || moved.c != moved.a || moved.d != moved.a) strokes.push_back(moved);
  } else {
    const EllipseArc arc = image(std::get<EllipseArc>(curve), frame);
    if (arc.sweep != 0) draw_arc(arc, strokes);
  }
}

void flatten(const PathSegment& stroke, double deviation, std::vector<Point>& points) {
  const int count = std::visit([&](const auto& part) { return chords(part, deviation); }, stroke);
  for (int i = 1; i < count; ++i)
    points.push_back(std::visit([&](const auto& part) { return part.at(static_cast<double>(i) / count); }, stroke));
  points.push_back(end_of(stroke));
}

double area(const PathLoop& loop) {
  if (loop.empty()) return 0;
  const Point origin = start_of(loop.front());
  double twice = 0;
  for (const PathSegment& stroke : loop) {
    if (const CurveSegment* segment = std::get_if<CurveSegment>(&stroke)) {
      twice += cross(segment->a - origin, segment->b - origin);
      if (segment->is_arc()) twice += segment->radius * segment->radius * (segment->sweep - std::sin(segment->sweep));
    } else {
      const Bezier& z = std::get<Bezier>(stroke);
      twice += twice_area({z.a - origin, z.c - origin, z.d - origin, z.b - origin});
    }
  }
  return twice / 2;
}

Box bounds(const PathLoop& loop) {
  Box box;
  for (const PathSegment& stroke : loop) add_bounds(stroke, box);
  return box;
}

}  // namespace sagitta
