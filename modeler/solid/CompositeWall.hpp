#pragma once

/// The surface of a wall that stands on arcs with one tangent.

#include <Geom2d_Curve.hxx>
#include <Geom_Surface.hxx>

#include "solid/EdgeCurve.hpp"

namespace sagitta {

/// The upright surface under a smooth wall. Its first parameter is z, its second runs along the wall: the
/// kernel chooses the points of an integral over a face by its second parameter. A spline from the wall's lowest point
/// to its highest: the kernel's integrals see no knots in an extruded one. Its normal is to the left
/// of the way along the spline.
class CompositeWall {
 public:
  CompositeWall(const Shell& shell, const ShellFace& face);
  const Handle(Geom_Surface) & surface() const { return surface_; }
  /// Its normal looks to the right of the way along the run, not to the left.
  bool reversed() const { return reversed_; }
  /// How far the surface is from the exact curve under it, seen from above. mm.
  double deviation() const { return deviation_; }
  /// How far an end of the wall lies off the curve, seen from above. mm.
  double off(Point end) const;
  /// The pcurve of one of the wall's own edges over the same parameter as its curve; exact but for `deviation`, as both
  /// are splines of their own near one curve.
  Handle(Geom2d_Curve) pcurve(const ShellEdge& edge, const EdgeCurve& curve) const;

 private:
  const Shell& shell_;
  Point start_;
  double first_ = 0, last_ = 0, deviation_ = 0;
  bool reversed_ = false;
  std::vector<Point> ends_;  ///< of the curve from above
  Handle(Geom_Surface) surface_;
};

}  // namespace sagitta
