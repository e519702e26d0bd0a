#pragma once

/// Arc splines without an arc that is tighter than the cutter.

#include "inlay/ArcSpline.hpp"

namespace sagitta {

/// Arcs along a run, as `fit_arc_spline` finds them, of which cutters of the run's least radii leave next to nothing. A
/// chain that strays as far as it may can come to where only a tighter arc goes on: about such arcs it is made again,
/// closer to the stations. Lengths in mm.
std::vector<CurveSegment> fit_rolled_arc_spline(const SmoothRun& run);

}  // namespace sagitta
