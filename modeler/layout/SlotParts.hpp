#pragma once

/// Slots that the heel end parts.

#include "layout/Layout.hpp"

namespace sagitta {

/// Each slot of the main board that the heel end cuts becomes what the end leaves of it: parts that lie on the board,
/// from bass to treble, open where the end cuts them. Adds a fault for a slot of which nothing is left, or a part
/// shorter than two slot widths, or a part without wood toward the bridge. The layout is right-handed and has its
/// outline.
void part_slots(const Board& board, Layout& layout, Faults& faults);

/// Whether the heel end cuts the slot.
bool is_parted(const Slot& slot);

}  // namespace sagitta
