#pragma once

/// The part of an ellipse that a run of arcs stands for.

#include <gp_Ax2.hxx>
#include <vector>

#include "plane/Ellipse.hpp"
#include "solid/EdgeCurve.hpp"

namespace sagitta {

/// The part of an ellipse, or of the curve beside it, that a run of arcs stands for, counter-clockwise, over the
/// ellipse's own parameter: from `first` to `last`, within a whole turn of the kernel's (0 to 2 pi), as no run is
/// longer than half a turn.
struct EllipseRun {
  EllipseRun(const OffsetEllipse& whole, const std::vector<CurveSegment>& run);

  Ellipse ellipse;  ///< begun at the end of its longer axis that the arc does not pass
  double off = 0;   ///< how far beside it
  double first = 0, last = 0;
  bool reversed = false;  ///< the run goes clockwise

  /// `first`, places between which the curve beside the ellipse turns evenly, and `last`: it turns fast where the
  /// ellipse is tightest.
  std::vector<double> spans() const;
  /// The kernel's axes of the ellipse at height z.
  gp_Ax2 axes(double z) const;
  double major() const { return length(ellipse.major); }
  double minor() const { return ellipse.ratio * major(); }
};

/// An ellipse at a level height exactly; over the playing surface, or beside an ellipse, within 1e-7 mm. Parametrised
/// by the ellipse's own parameter.
EdgeCurve over_ellipse(const Surface& surface, const BoundingSurface& bound, const EllipseRun& arc);

}  // namespace sagitta
