#pragma once

#include "random/Dice.hpp"
#include "random/RandomBoard.hpp"

namespace sagitta::random_boards {

/// Scale, strings, outline, surface, nut and slots; may be impossible.
Board draw_plain(Dice& dice, Space space);

/// Adds inlays that often touch, coincide with, or hang over what the layout of the plain board has.
void draw_inlays(Dice& dice, Space space, const Layout& layout, Board& board);

/// Adds side dots, binding, pins, sanding, cutters and another order of work.
void draw_extras(Dice& dice, const Layout& layout, Board& board);

}  // namespace sagitta::random_boards
