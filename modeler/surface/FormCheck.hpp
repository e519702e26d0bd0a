#pragma once

/// The check that scallops and worked edges exist and leave wood.

#include "surface/Surface.hpp"

namespace sagitta {

/// Adds a fault where a fret space has no room for its scallop or a slot for its land, where a roll or a bevel is too
/// large for the board or cuts nothing, and where one of them leaves less wood than `least_floor` under it or over a
/// side dot's hole. The surface must exist over the board.
void check_forms(const Board& board, const Layout& layout, const Surface& surface, Faults& faults);

}  // namespace sagitta
