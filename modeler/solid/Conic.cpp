#include "solid/Conic.hpp"

#include <cmath>

#include "plane/Tolerance.hpp"
#include "solid/Height.hpp"

namespace sagitta {
namespace {

/// A conic whose middle lies no further off its chord is written as a line. mm.
constexpr double straight_within = 1e-10;

}  // namespace

bool Conic::straight() const {
  const double s = distance(a, b) > 0 ? dot(m - a, b - a) / dot(b - a, b - a) : 0.5;
  const Point on = between(a, b, s);
  return std::abs(weight - 1) < tolerance::share && distance(on, m) < straight_within &&
         std::abs(za + s * (zb - za) - zm) < straight_within;
}

Conic wall_section(const Surface& surface, const BoundingSurface& bound, Point a, Point b) {
  const double ra = surface.radius(a.x), rb = surface.radius(b.x);
  const double a0 = std::sqrt(ra - a.y), b0 = std::sqrt(ra + a.y), a1 = std::sqrt(rb - b.y), b1 = std::sqrt(rb + b.y);
  const double sa = a0 * b0, sb = a1 * b1, q = a0 * b1 + a1 * b0;
  const double ga = std::sqrt(2) * a.y / (a0 + b0), gb = std::sqrt(2) * b.y / (a1 + b1);
  const double s = sa / (sa + sb);
  Conic conic{a, between(a, b, s), b, height(surface, bound, a), 0, height(surface, bound, b), (sa + sb) / q};
  const double crown_a = conic.za + ga * ga, crown_b = conic.zb + gb * gb;
  conic.zm = crown_a + s * (crown_b - crown_a) - ga * gb / conic.weight;
  return conic;
}

double sagitta_at(const IntersectionCurve& curve, Point p) {
  const double radius = curve.r0 + p.x * (curve.r1 + curve.r2 * p.x);
  return p.y * p.y / (radius + std::sqrt((radius - p.y) * (radius + p.y)));
}

Conic level_section(const IntersectionCurve& curve, Point a, Point b) {
  const auto rest = [&](Point p) { return 2 * (curve.r0 + curve.r1 * p.x); };
  const double da = sagitta_at(curve, a), db = sagitta_at(curve, b);
  const double ya = std::sqrt(da * (rest(a) - da)), yb = std::sqrt(db * (rest(b) - db));
  const double q = std::sqrt(da * (rest(b) - db)) + std::sqrt(db * (rest(a) - da));
  const double weight = (ya + yb) / q, s = ya / (ya + yb);
  const Point first{a.x, curve.side * ya}, last{b.x, curve.side * yb};
  const Point middle{a.x + s * (b.x - a.x), curve.side * q / (2 * weight)};
  return {first, middle, last, curve.level, curve.level, curve.level, weight};
}

}  // namespace sagitta
