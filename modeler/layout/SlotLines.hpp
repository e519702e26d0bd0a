#pragma once

/// The slots of the frets.

#include <string>

#include "layout/Layout.hpp"
#include "plane/RoundedPolygon.hpp"

namespace sagitta {

/// The slots of all frets (and of fret 0 on a board with a zero fret), none where the places are not cut. Adds faults
/// for blind slots without length, for slots that leave no wood between them, and for strips that are thicker than
/// their slot.
void place_slots(const Board& board, Layout& layout, Faults& faults);
/// Slots whose places are given, in order of x. Adds faults for those that leave no wood between them.
void take_slots(const Board& board, const std::vector<Slot>& slots, Layout& layout, Faults& faults);

/// What a slot covers of the board from above: for a through slot the strip between the board's edges, the tongue's
/// sides or the places where the heel end cuts it, for a blind one the strip with round ends.
RoundedPolygon slot_shape(const Layout& layout, const Slot& slot);

/// slots.line_thickness, with its default resolved.
double line_thickness(const Board& board);
/// The slot as it would be if no heel end cut it.
Slot whole_slot(const Board& board, const Layout& layout, const Slot& part);

/// "slot zero" or "the slot of fret 7", for messages.
std::string slot_name(const Slot& slot);

}  // namespace sagitta
