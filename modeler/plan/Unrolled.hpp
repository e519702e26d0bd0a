#pragma once

/// A curve on a side hole's wall, drawn on the wall rolled out flat: along the axis, and the arc length about it. There
/// it has no upright tangent, however the hole lies, and is followed on the normals of its chord.

#include <array>
#include <cmath>

#include "plan/Subdivision.hpp"

namespace sagitta {

/// How far the moved surface of a crossing lies above the hole's wall, `along` the axis and at `angle` from the
/// upright. T is double or a jet.
template <class T>
T above_wall(const IntersectionCurve& curve, T along, T angle) {
  using std::cos, std::sin, std::sqrt;
  const Tunnel& tunnel = *curve.tunnel;
  const T across = tunnel.offset + tunnel.radius * sin(angle);
  const T x = tunnel.nx * across + tunnel.ny * along, y = tunnel.ny * across - tunnel.nx * along;
  const T wall = curve.axis + (curve.side * tunnel.radius) * cos(angle);
  const T crown = curve.d0 + curve.d1 * x;
  if (curve.flat) return crown - wall;
  const T radius = curve.r0 + x * (curve.r1 + curve.r2 * x);
  return crown - y * y / (radius + sqrt((radius - y) * (radius + y))) - wall;
}

/// How far along (n1, n2) from (c1, c2) the gap is zero, and its slope there.
template <class Gap>
std::array<double, 2> foot(Gap gap, double c1, double c2, double n1, double n2) {
  const auto off = [&](double s) { return gap(c1 + s * n1, c2 + s * n2); };
  constexpr double step = 1e-6;       // mm, for the slope by central differences
  constexpr double resolved = 1e-15;  // mm: a double tells no more
  double s = 0, slope = 1;
  for (int i = 0; i < 40; ++i) {
    slope = (off(s + step) - off(s - step)) / (2 * step);
    if (slope == 0) break;
    const double by = off(s) / slope;
    s -= by;
    if (std::abs(by) < resolved) break;
  }
  return {s, slope};
}

/// Two places on the rolled-out wall, from a to b.
struct WallChord {
  double a1 = 0, a2 = 0, b1 = 0, b2 = 0;
};

/// The place on the curve gap(first, second) = 0 on the chord's normal at t.
template <class Gap>
std::array<double, 2> on_normal(const WallChord& chord, Gap gap, double t) {
  const double n1 = chord.a2 - chord.b2, n2 = chord.b1 - chord.a1;
  const double c1 = chord.a1 + t * (chord.b1 - chord.a1), c2 = chord.a2 + t * (chord.b2 - chord.a2);
  const double s = foot(gap, c1, c2, n1, n2)[0];
  return {c1 + s * n1, c2 + s * n2};
}

}  // namespace sagitta
