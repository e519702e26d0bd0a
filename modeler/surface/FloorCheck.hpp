#pragma once

/// The check that every floor leaves wood under it.

#include "surface/Surface.hpp"

namespace sagitta {

/// Adds a fault for each kind of cut whose floor would lie under `least_floor`: pockets, nut seat, slots, binding; for
/// pins with no wood over them; for side dots taller than the edge. The surface must exist over the board.
void check_floors(const Board& board, const Layout& layout, const Surface& surface, Faults& faults);

}  // namespace sagitta
