#include <algorithm>

#include "plan/FollowedEdge.hpp"
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
  return followed_y(*meeting, a, b, x);
}

Point IntersectionCurve::at(Point a, Point b, double t) const {
  if (t <= 0) return a;
  if (t >= 1) return b;
  if (straight) return between(a, b, t);
  if (tunnel) return on_wall(*this, a, b, t);
  if (meeting) return FollowedEdge(*meeting, a, b).at(t);
  const bool tip_a = std::abs(a.y) <= tolerance::vertex, tip_b = std::abs(b.y) <= tolerance::vertex;
  double s = t;  // fraction of the way in x: quadratic away from a tip, so that y is smooth there
  if (tip_a && tip_b) s = (1 - std::cos(std::numbers::pi * t)) / 2;
  if (tip_a && !tip_b) s = t * t;
  if (!tip_a && tip_b) s = t * (2 - t);
  const double x = a.x + s * (b.x - a.x);
  return {x, y(a, b, x)};
}

}  // namespace sagitta
