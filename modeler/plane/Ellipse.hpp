#pragma once

/// Ellipses.

#include "plane/Plane.hpp"

namespace sagitta {

/// A whole ellipse of the plane, mm.
struct Ellipse {
  Point centre;
  Point major;       ///< from the centre to an end of the longer axis
  double ratio = 1;  ///< the shorter half axis over the longer, in (0, 1]

  /// From the centre to the end of the shorter axis a quarter turn on.
  Point minor() const { return ratio * left_of(major); }
  /// Counter-clockwise, from the end of the longer axis; t in radians, 2 pi all round. Not the angle about the centre.
  Point at(double t) const { return centre + std::cos(t) * major + std::sin(t) * minor(); }
  /// d/dt of at(t).
  Point slope(double t) const { return std::cos(t) * minor() - std::sin(t) * major; }
  /// The t, -pi to pi or a hair beyond, of the point nearest to p, which lies near the curve: by Newton's method on the
  /// square of the distance.
  double nearest(Point p) const;

  Ellipse moved(Point by) const { return {centre + by, major, ratio}; }
  /// Turned about the origin, counter-clockwise positive.
  Ellipse turned(double angle) const { return {sagitta::turned(centre, angle), sagitta::turned(major, angle), ratio}; }
  /// Mirrored in y.
  Ellipse mirrored() const { return {{centre.x, -centre.y}, {major.x, -major.y}, ratio}; }
  /// The same curve, begun at the other end of its longer axis.
  Ellipse from_other_end() const { return {centre, -1 * major, ratio}; }
  friend bool operator==(const Ellipse&, const Ellipse&) = default;
};

/// The curve that runs beside an ellipse, outside it (its parallel curve, no ellipse), mm.
struct OffsetEllipse {
  Ellipse ellipse;
  double off = 0;  ///< >= 0; 0: the ellipse itself

  /// By the parameter of the ellipse's point that it runs beside.
  Point at(double t) const { return ellipse.at(t) - off * left_of(unit(ellipse.slope(t))); }
  /// How far p, near the curve, lies off it. mm.
  double distance_to(Point p) const { return distance(p, at(ellipse.nearest(p))); }
  friend bool operator==(const OffsetEllipse&, const OffsetEllipse&) = default;
};

inline double Ellipse::nearest(Point p) const {
  const Point off = p - centre;
  double t = std::atan2(dot(off, minor()) / (ratio * ratio), dot(off, major));
  constexpr int steps = 8;  // the first guess is near: the number of right digits doubles in each
  for (int i = 0; i < steps; ++i) {
    const Point way = at(t) - p, along = slope(t);
    t -= dot(way, along) / (dot(along, along) - dot(way, at(t) - centre));
  }
  return t;
}

}  // namespace sagitta
