#pragma once

/// The surfaces that bound the wood of a cell: heights over x and y, with one formula for numbers and for jets.

#include <compare>

#include "plan/Tunnel.hpp"
#include "surface/Surface.hpp"

namespace sagitta {

/// A surface that bounds a cell from above or below.
struct BoundingSurface {
  enum class Kind {
    none,
    level,           ///< a horizontal plane
    offset_surface,  ///< the playing surface, moved down, in one of its forms
    trough,          ///< the lower half of a side hole's round wall: bounds the wood below it
    vault,           ///< the upper half: bounds the wood above it
    roll             ///< the outer quarter of a rolled edge, moved down: bounds the wood below it
  };
  Kind kind = Kind::none;
  double value = 0;     ///< level: its height z; offset_surface, roll: how far it is moved down (negative: up); trough,
                        ///< vault: z of the axis
  bool fallen = false;  ///< offset_surface, roll: the part beyond the line where the fall-away begins
  Tunnel tunnel = {};   ///< trough, vault, roll
  /// offset_surface: 0 is the playing surface itself, i > 0 the scalloped space i - 1, i < 0 the bevel of the worked
  /// edge -1 - i; roll: index of the worked edge.
  int form = 0;

  /// Whether it is part of a round wall that lies along its tunnel.
  bool round() const { return kind == Kind::trough || kind == Kind::vault || kind == Kind::roll; }
  bool of_hole() const { return kind == Kind::trough || kind == Kind::vault; }
  bool scalloped() const { return kind == Kind::offset_surface && form > 0; }
  /// Whether it is a plane, on this playing surface.
  bool plane(const Surface& surface) const {
    return kind == Kind::level || (kind == Kind::offset_surface && surface.flat && form == 0);
  }
  friend auto operator<=>(const BoundingSurface&, const BoundingSurface&) = default;
};

/// The roll of a worked edge, moved down by `value`.
BoundingSurface roll_along(const Surface& surface, int edge, double value);

/// Height of a bound at p; the part (fallen or not) is taken from the bound, not from p.
double height(const Surface& surface, const BoundingSurface& bound, Point p);

/// Height of the centre line of a moved surface.
template <class T>
T crown_of(const Surface& surface, const BoundingSurface& bound, T x) {
  const double slope = bound.fallen ? surface.fall_slope : 0, start = bound.fallen ? *surface.fall_start : 0;
  return (surface.thickness - bound.value + slope * start) - slope * x;
}

/// Height that an arc `less` smaller in radius than the playing arc loses at y.
template <class T>
T drop_of(const Surface& surface, T x, T y, double less = 0) {
  using std::sqrt;
  if (surface.flat) return 0.0 * x;
  const T radius = (surface.r0 - less) + x * (surface.r1 + surface.r2 * x);
  return y * y / (radius + sqrt((radius - y) * (radius + y)));
}

/// Height of the axis that a round wall lies about.
template <class T>
T axis_of(const Surface& surface, const BoundingSurface& bound, T x) {
  if (bound.of_hole()) return bound.value + 0.0 * x;
  const WorkedEdge& edge = surface.worked_edges[static_cast<std::size_t>(bound.form)];
  return crown_of(surface, bound, x) - drop_of(surface, x, edge.reach(x) - T{edge.roll}, edge.roll) - T{edge.roll};
}

/// How far a round wall rises over its axis, or falls below it: of its tunnel's half width.
inline double rise_of(const Surface& surface, const BoundingSurface& bound) {
  return bound.kind == BoundingSurface::Kind::roll ? surface.worked_edges[static_cast<std::size_t>(bound.form)].roll
                                                   : bound.tunnel.radius;
}

/// Height of a level or of a form of the moved playing surface.
template <class T>
T height_over(const Surface& surface, const BoundingSurface& bound, T x, T y) {
  if (bound.kind != BoundingSurface::Kind::offset_surface) return bound.value + 0.0 * x;
  const T crown = crown_of(surface, bound, x);
  if (bound.form >= 0) {
    const T whole = crown - drop_of(surface, x, y);
    return bound.form == 0 ? whole : whole - surface.scallops[static_cast<std::size_t>(bound.form - 1)].below(x, y);
  }
  const WorkedEdge& edge = surface.worked_edges[static_cast<std::size_t>(-1 - bound.form)];
  const T begin = edge.reach(x) - T{edge.bevel};
  return crown - drop_of(surface, x, begin) - edge.steepness * (double(edge.side) * y - begin);
}

/// Two surfaces that meet, on this playing surface.
struct SurfacePair {
  Surface surface;
  BoundingSurface upper, other;

  double gap(Point p) const { return height(surface, upper, p) - height(surface, other, p); }
};

}  // namespace sagitta
