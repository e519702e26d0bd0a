#pragma once

/// The playing surface as a surface of the geometry kernel.

#include <Geom2d_Curve.hxx>
#include <Geom_Surface.hxx>

#include "solid/EdgeCurve.hpp"

namespace sagitta {

/// The playing surface moved down, as an exact patch: a cylinder where the radius is constant and nothing falls away, a
/// plane where it is flat, else rational of degree (1, 2), on even-edge (2, 2): rows are circular arcs square to the
/// centre line that share one half-angle. The first parameter is x, the second about y, both in mm. Wide cylinders are
/// rational too: in the angles of a cylinder of large radius, what is apart on the surface is too near for the kernel.
class Patch {
 public:
  /// `reach`: x over which the patch must serve; `slant`: largest |y| / R there.
  Patch(const Surface& surface, const BoundingSurface& bound, double low, double high, double slant);

  const Handle(Geom_Surface) & surface() const { return geometry_; }
  bool plane() const { return plane_; }
  /// The edge's pcurve in the patch's parameters, over the same parameter as its curve; `deviation` in mm is raised to
  /// the measured one.
  Handle(Geom2d_Curve) pcurve(const EdgeCurve& edge, double& deviation) const;

 private:
  std::array<Jet, 2> parameters(Jet x, Jet y) const;
  double scale_ = 1;  ///< second parameter over the tangent of half the angle from the crown, mm
  bool plane_ = false, cylinder_ = false;
  Surface law_;
  Handle(Geom_Surface) geometry_;
};

}  // namespace sagitta
