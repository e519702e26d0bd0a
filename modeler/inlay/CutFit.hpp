#pragma once

/// The builder's own cuts fitted to the cutter that clears them.

#include "inlay/Inlays.hpp"

namespace sagitta {

/// The radius that cuts are made with: that of the narrowest cutter named for pocket-clear; 0 when none is named.
double clearing_radius(const Board& board);

/// All cuts, in the board's order. Faults: a shape that the cutter does not go into, a drawing that fills nothing or is
/// too large, a cut that lies beside the board. Cancelled: no cuts and no faults.
std::variant<std::vector<FittedCut>, Faults> fit_cuts(const Board& board, const Layout& layout,
                                                      const Drawings& drawings, const Cancel& cancel = {});

}  // namespace sagitta
