#pragma once

/// Arc splines without an arc that is tighter than the cutter.

#include "inlay/ArcSpline.hpp"

namespace sagitta {

/// An arc spline as `fit_arc_spline` makes it, but without arcs that a cutter of the least radius cannot follow. Where
/// the first fit needs a tighter arc, that part is fitted again, closer to the stations. Lengths in mm.
std::vector<CurveSegment> fit_rolled_arc_spline(const SmoothRun& run);

}  // namespace sagitta
