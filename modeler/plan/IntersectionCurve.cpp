#include <algorithm>

#include "plan/Roots.hpp"
#include "plan/Subdivision.hpp"
#include "plan/Unrolled.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

Point on_wall(const IntersectionCurve& curve, Point a, Point b, double t) {
  const Tunnel& tunnel = *curve.tunnel;
  const double r = tunnel.radius;
  const WallChord chord{tunnel.along(a), r * tunnel.angle(tunnel.across(a)), tunnel.along(b),
                        r * tunnel.angle(tunnel.across(b))};
  const auto [u, w] = on_normal(
      chord, [&](double along, double arc) { return above_wall(curve, along, arc / r); }, t);
  return tunnel.at(u, r * std::sin(w / r));
}

/// The box that an edge of a followed curve lies in: that of its ends, which may lie off the curve by what two heights
/// may differ by and still be one.
Box around(Point a, Point b) {
  constexpr double part = 1e-3;
  Box box;
  box.add(a);
  box.add(b);
  return box.grown(part * distance(a, b) + 2 * tolerance::snap);
}

/// The point on the chord's normal at t. The curve is monotone in x and in y, so that the normal meets it once within
/// the box; it is found by bisection.
Point followed(const SurfacePair& meeting, Point a, Point b, double t) {
  const Point on = between(a, b, t), normal = left_of(unit(b - a));
  const Box box = around(a, b);
  const auto reach = [&](double sense) {  // how far along the normal the box ends
    const Point way = sense * normal;
    const double in_x = way.x == 0 ? 1e300 : ((way.x > 0 ? box.high.x : box.low.x) - on.x) / way.x;
    const double in_y = way.y == 0 ? 1e300 : ((way.y > 0 ? box.high.y : box.low.y) - on.y) / way.y;
    return sense * std::min(in_x, in_y);
  };
  const auto gap = [&](double s) { return meeting.gap(on + s * normal); };
  return on + root_between(gap, reach(-1), reach(1)).value_or(0) * normal;
}

/// Where a curve on a round wall passes x: by bisection along it.
double passing(const IntersectionCurve& curve, Point a, Point b, double x) {
  double low = 0, high = 1;
  constexpr int halvings = 48;
  for (int i = 0; i < halvings; ++i) {
    const double middle = (low + high) / 2;
    ((curve.at(a, b, middle).x < x) == (a.x < b.x) ? low : high) = middle;
  }
  return curve.at(a, b, high).y;
}

}  // namespace

double IntersectionCurve::y(Point a, Point b, double x) const {
  if (!meeting) return side * std::sqrt(std::max(0.0, square(x)));
  if (tunnel) return passing(*this, a, b, x);
  const Box box = around(a, b);
  const auto gap = [&](double y) { return meeting->gap({x, y}); };
  const double straight_on = a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y);
  return root_between(gap, box.low.y, box.high.y).value_or(straight_on);
}

Point IntersectionCurve::at(Point a, Point b, double t) const {
  if (t <= 0) return a;
  if (t >= 1) return b;
  if (straight) return between(a, b, t);
  if (tunnel) return on_wall(*this, a, b, t);
  if (meeting) return followed(*meeting, a, b, t);
  const bool tip_a = std::abs(a.y) <= tolerance::vertex, tip_b = std::abs(b.y) <= tolerance::vertex;
  double s = t;  // fraction of the way in x: quadratic away from a tip, so that y is smooth there
  if (tip_a && tip_b) s = (1 - std::cos(std::numbers::pi * t)) / 2;
  if (tip_a && !tip_b) s = t * t;
  if (!tip_a && tip_b) s = t * (2 - t);
  const double x = a.x + s * (b.x - a.x);
  return {x, y(a, b, x)};
}

}  // namespace sagitta
