#include <algorithm>

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

}  // namespace

double IntersectionCurve::y(double x) const { return side * std::sqrt(std::max(0.0, square(x))); }

Point IntersectionCurve::at(Point a, Point b, double t) const {
  if (t <= 0) return a;
  if (t >= 1) return b;
  if (straight) return between(a, b, t);
  if (tunnel) return on_wall(*this, a, b, t);
  const bool tip_a = std::abs(a.y) <= tolerance::vertex, tip_b = std::abs(b.y) <= tolerance::vertex;
  double s = t;  // fraction of the way in x: quadratic away from a tip, so that y is smooth there
  if (tip_a && tip_b) s = (1 - std::cos(std::numbers::pi * t)) / 2;
  if (tip_a && !tip_b) s = t * t;
  if (!tip_a && tip_b) s = t * (2 - t);
  const double x = a.x + s * (b.x - a.x);
  return {x, y(x)};
}

}  // namespace sagitta
