#pragma once

/// A scallop, a bevel or a roll as a surface of the geometry kernel.

#include <Geom2d_Curve.hxx>

#include "plan/BoundChart.hpp"
#include "solid/EdgeCurve.hpp"
#include "solid/FittedPatch.hpp"

namespace sagitta {

/// A form of the moved playing surface over a part of the board, within 5e-6 mm of its formula (1e-9 mm is the aim).
/// The parameters are those of its chart, mm.
class FormPatch {
 public:
  /// `reach`: a box from above that the face lies in. Throws Standard_Failure where the formula cannot be followed.
  FormPatch(const Surface& surface, const BoundingSurface& bound, const Box& reach);

  const Handle(Geom_BSplineSurface) & surface() const { return fitted_.surface; }
  /// The edge's pcurve over the same parameter as its curve; `deviation` in mm is raised to the measured one.
  Handle(Geom2d_Curve) pcurve(const EdgeCurve& edge, double& deviation) const;

 private:
  std::array<double, 3> place(double u, double v) const;
  std::array<Jet, 2> parameters(const std::array<Jet, 3>& p) const;

  Surface law_;
  BoundingSurface bound_;
  FormChart chart_;
  FittedPatch fitted_;
};

}  // namespace sagitta
