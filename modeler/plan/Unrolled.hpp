#pragma once

/// A curve on a side hole's wall, drawn on the wall rolled out flat: along the axis, and the arc length about it. There
/// it has no upright tangent, however the hole lies, and is followed on the normals of its chord.

#include <array>
#include <cmath>

#include "plan/Subdivision.hpp"

namespace sagitta {

/// How far a roll lies under the playing arc that it is tangent to, as a root, `angle` from the upright at x. With
/// n = y - y_t from the tangent point at slope angle a, k = 1/r - 1/R, and for both arcs c = the cosine at y, N = 2 sin
/// a
/// + n / radius and M = cos a + c: the heights of both arcs under their common tangent, subtracted without
/// cancellation.
template <class T>
T root_under_playing_arc(const Surface& surface, const WorkedEdge& edge, T x, T angle) {
  using std::cos, std::sin, std::sqrt;
  const double r = edge.roll;
  const T begin = edge.reach(x) - T{r}, here = begin + r * sin(angle), c = cos(angle), one = T{1.0};
  T bend = T{0.0}, sine = T{0.0}, arc = one;  // 1 / R, sin a, and the playing arc's cosine
  if (!surface.flat) {
    const T radius = surface.r0 + x * (surface.r1 + surface.r2 * x);
    bend = one / radius;
    sine = begin / (radius - T{r});
    arc = sqrt((one - here * bend) * (one + here * bend));
  }
  const T tangent = begin + r * sine, n = here - tangent, cosine = sqrt((one - sine) * (one + sine));
  const T inner = cosine + c, outer = cosine + arc, steep = 2 * sine + (1 / r) * n;
  const T bracket = steep * (2 * sine + n * (T{1 / r} + bend)) / (arc + c) + inner;
  return n * sqrt((T{1 / r} - bend) * bracket / (inner * outer));
}

/// Whether a roll and a scallop lie under the same playing surface, to which both are tangent.
inline bool touch_squarely(const BoundingSurface& roll, const BoundingSurface& other) {
  return roll.kind == BoundingSurface::Kind::roll && other.scalloped() && other.value == roll.value &&
         other.fallen == roll.fallen;
}

/// How far the other surface lies above a rolled edge. Under a scallop of the same playing surface both lie by
/// squares of smooth functions: their roots are compared, so that the curve starts clearly where both are zero.
template <class T>
T above_roll(const Surface& surface, const BoundingSurface& roll, const BoundingSurface& other, T x, T y, T angle) {
  using std::cos, std::sin;
  const WorkedEdge& edge = surface.worked_edges[static_cast<std::size_t>(roll.form)];
  if (touch_squarely(roll, other)) {
    const ScallopedSpace& space = surface.scallops[static_cast<std::size_t>(other.form - 1)];
    return root_under_playing_arc(surface, edge, x, angle) -
           std::sqrt(space.depth) * sin(std::numbers::pi * space.share(x, y));
  }
  return height_over(surface, other, x, y) - axis_of(surface, roll, x) - edge.roll * cos(angle);
}

/// How far the other surface of a crossing lies above the round wall, `along` the axis and at `angle` from the upright.
/// T is double or a jet.
template <class T>
T above_wall(const IntersectionCurve& curve, T along, T angle) {
  using std::cos, std::sin, std::sqrt;
  const Tunnel& tunnel = *curve.tunnel;
  const T across = tunnel.offset + tunnel.radius * sin(angle);
  const T x = tunnel.nx * across + tunnel.ny * along, y = tunnel.ny * across - tunnel.nx * along;
  if (curve.meeting) return above_roll(curve.meeting->surface, curve.meeting->upper, curve.meeting->other, x, y, angle);
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
