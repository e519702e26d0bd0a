#pragma once

/// The wall that stands on an arc of an ellipse, for the geometry kernel.

#include <Geom2d_Curve.hxx>
#include <Geom_SurfaceOfLinearExtrusion.hxx>

#include "solid/EdgeCurve.hpp"
#include "solid/EllipseRun.hpp"

namespace sagitta {

/// The upright surface under a wall that stands on an ellipse. Its first parameter is the ellipse's, its second is z.
/// Its normal looks away from the ellipse's middle.
class EllipseWall {
 public:
  EllipseWall(const Shell& shell, const ShellFace& face);
  const Handle(Geom_SurfaceOfLinearExtrusion) & surface() const { return surface_; }
  /// The pcurve of one of the wall's own edges over the same parameter as its curve; exact.
  Handle(Geom2d_Curve) pcurve(const ShellEdge& edge, const EdgeCurve& curve) const;
  /// How far a point near the ellipse lies off it, seen from above. mm.
  double off(Point p) const { return ellipse_.distance_to(p); }

 private:
  const Shell& shell_;
  OffsetEllipse ellipse_;
  EllipseRun arc_;
  Point first_, last_;  ///< where the ellipse's parameter is least and largest
  Handle(Geom_SurfaceOfLinearExtrusion) surface_;
};

}  // namespace sagitta
