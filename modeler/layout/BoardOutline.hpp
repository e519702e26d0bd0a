#pragma once

/// The outline of the finished board.

#include "layout/DrawnEnd.hpp"
#include "layout/Layout.hpp"
#include "layout/Taper.hpp"

namespace sagitta {

/// Outline and long edges of the finished board, in the order: edge at negative y, heel end with its corners, edge at
/// positive y, nut end. False, with faults added, when they cannot be drawn. `end`: the line of a drawn heel end; may
/// be null.
bool draw_outline(const Board& board, const DrawnEnd* end, const Taper& taper, Layout& layout, Faults& faults);

/// Wood between a slot and the heel end.
struct EndWood {
  double wood = 0;  ///< mm, at its thinnest along the slot, corner arcs included; < 0: the end takes some of the slot
  Point at;         ///< on the slot's middle line, where the end is nearest
};

/// The wood between a slot of a drawn outline and its heel end, or the tongue's.
EndWood wood_behind(const Board& board, const Layout& layout, const Slot& slot);

/// Adds a fault for each slot that meets the nut end, the heel end or the tongue's, corner arcs included; where the
/// heel end may cut slots, not for the heel end.
void check_ends(const Board& board, const Layout& layout, Faults& faults);

}  // namespace sagitta
