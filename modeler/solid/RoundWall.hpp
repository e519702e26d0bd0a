#pragma once

/// The cylinder of a wall that stands on an arc, for the geometry kernel.

#include <Geom2d_Curve.hxx>
#include <Geom_CylindricalSurface.hxx>

#include "solid/EdgeCurve.hpp"

namespace sagitta {

/// The cylinder under a wall that stands on an arc. Its first parameter is the angle from the wall's own start, so that
/// no wall crosses the seam; the second is z.
class RoundWall {
 public:
  RoundWall(const Shell& shell, const ShellFace& face);
  const Handle(Geom_CylindricalSurface) & surface() const { return cylinder_; }
  /// The pcurve of an edge over the same parameter as its curve; how far it strays is added to `deviation`, mm.
  Handle(Geom2d_Curve) pcurve(const ShellEdge& edge, const EdgeCurve& curve, double& deviation) const;

 private:
  Handle(Geom2d_Curve) across_hole(const EdgeCurve& curve, double& deviation) const;
  double angle(double from_x_axis) const;  ///< from the wall's start
  const Shell& shell_;
  Point centre_;
  double start_ = 0;
  Handle(Geom_CylindricalSurface) cylinder_;
};

}  // namespace sagitta
