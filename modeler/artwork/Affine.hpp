#pragma once

/// Affine maps of the plane.

#include "plane/Plane.hpp"

namespace sagitta {

/// x' = a x + c y + e, y' = b x + d y + f: the matrix of SVG 1.1, section 7.4.
struct Affine {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;

  Point operator()(Point p) const { return {a * p.x + c * p.y + e, b * p.x + d * p.y + f}; }
  /// The image of a vector: no shift.
  Point direction(Point v) const { return {a * v.x + c * v.y, b * v.x + d * v.y}; }
  double determinant() const { return a * d - b * c; }
  friend bool operator==(const Affine&, const Affine&) = default;
};

/// First `inner`, then `outer`.
inline Affine operator*(const Affine& outer, const Affine& inner) {
  const Point u = outer.direction({inner.a, inner.b}), v = outer.direction({inner.c, inner.d});
  const Point shift = outer({inner.e, inner.f});
  return {u.x, u.y, v.x, v.y, shift.x, shift.y};
}

inline Affine shift_by(Point by) { return {1, 0, 0, 1, by.x, by.y}; }
inline Affine scale_by(double x, double y) { return {x, 0, 0, y, 0, 0}; }
/// Counter-clockwise where y points up.
inline Affine turn_by(double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  return {c, s, -s, c, 0, 0};
}

}  // namespace sagitta
