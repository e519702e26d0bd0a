#pragma once

#include "inlay/ArcRun.hpp"

namespace sagitta {

/// Arcs along a run, as `arcs_along` finds them, of which cutters of the run's least radii leave next to nothing. A
/// chain that strays as far as it may can come to where only a tighter arc goes on: about such arcs it is made again,
/// closer to the stations. Lengths in mm.
std::vector<Piece> arcs_rolled_along(const SmoothRun& run);

}  // namespace sagitta
