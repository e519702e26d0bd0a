#pragma once

/// The exact orientation predicate of three points.

#include "plane/Plane.hpp"

namespace sagitta {

/// Twice the signed area of a triangle, positive when counter-clockwise, with the right sign whenever the coordinates
/// are those of `rounded`: their differences are exact in doubles, and where the products could cancel they are taken
/// exactly.
inline double orient2d(Point a, Point b, Point c) {
  const double left = (b.x - a.x) * (c.y - a.y), right = (b.y - a.y) * (c.x - a.x);
  constexpr double rounding = 4e-16;  // of the two products together
  if (std::abs(left - right) > rounding * (std::abs(left) + std::abs(right))) return left - right;
  __extension__ using Exact = __float128;  // 113 bits: more than the product of two differences of floats needs
  const Exact exact = static_cast<Exact>(b.x - a.x) * static_cast<Exact>(c.y - a.y) -
                      static_cast<Exact>(b.y - a.y) * static_cast<Exact>(c.x - a.x);
  return static_cast<double>(exact);
}

}  // namespace sagitta
