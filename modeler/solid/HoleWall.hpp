#pragma once

/// The round wall of a side hole for the geometry kernel.

#include <Geom2d_Curve.hxx>
#include <Geom_CylindricalSurface.hxx>

#include "solid/EdgeCurve.hpp"

namespace sagitta {

/// The trough or the vault of a side hole: half a cylinder whose first parameter runs from 0 to pi across the hole, so
/// that it never meets the seam, and whose second runs inward.
class HoleWall {
 public:
  /// kind trough or vault.
  explicit HoleWall(const BoundingSurface& bound);

  const Handle(Geom_CylindricalSurface) & surface() const { return cylinder_; }
  /// An edge's pcurve; `deviation` is raised to the distance it strays, mm.
  Handle(Geom2d_Curve) pcurve(const EdgeCurve& edge, double& deviation) const;

 private:
  BoundingSurface bound_;
  double sense_;  ///< +1 for the vault
  Handle(Geom_CylindricalSurface) cylinder_;
};

}  // namespace sagitta
