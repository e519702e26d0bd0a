#pragma once

/// Sections of the playing surface that are conics, as rational quadratic Bezier curves.

#include "plan/Plan.hpp"

namespace sagitta {

/// A rational quadratic: ends of weight 1 and a middle point. mm.
struct Conic {
  Point a, m, b;
  double za = 0, zm = 0, zb = 0;
  double weight = 1;

  bool straight() const;
};

/// The section of a straight wall from a to b with a cone or cylinder z = c - R + sqrt((R - y)(R + y)), R and c linear.
/// Both factors are linear along the wall, and the root of a product of two linear functions is rational quadratic.
Conic wall_section(const Surface& surface, const BoundingSurface& bound, Point a, Point b);

/// How deep the surface's section at x lies under its crown, at p. mm.
double sagitta_at(const IntersectionCurve& curve, Point p);

/// Where a level floor meets the surface, y^2 = delta (2 R - delta) with both factors linear in x, from a to b. delta
/// is what leads through a and b: they may lie on a floor within tolerance::height of this one, and so may the curve.
Conic level_section(const IntersectionCurve& curve, Point a, Point b);

}  // namespace sagitta
