#pragma once

#include "random/Dice.hpp"
#include "random/RandomBoard.hpp"

namespace sagitta::random_boards {

/// Scale, strings, outline, surface, nut and slots; may be impossible.
Board draw_plain(Dice& dice, Space space);

/// Gives a plain board a hollow or slanted heel end that may cut slots, or a tongue; may be impossible.
void draw_ends(Dice& dice, Board& board);

/// Gives a plain board the keys of more kinds: margins for each side, courses, lines in place of frets, no frets at
/// all, arc floors of the nut's seat, ends and tongues; may be impossible.
void draw_kinds(Dice& dice, Board& board);

/// Adds worked edges, scallops, lines beside the binding, side dots in either edge, and milling to thickness.
void draw_forms(Dice& dice, const Layout& layout, Board& board);

/// Adds cuts of the builder's own that touch, coincide with or cross what the layout has.
void draw_cuts(Dice& dice, const Layout& layout, Board& board);

/// Adds inlays that often touch, coincide with, or hang over what the layout of the plain board has.
void draw_inlays(Dice& dice, Space space, const Layout& layout, Board& board);

/// Adds side dots, binding, pins, sanding, cutters and another order of work.
void draw_extras(Dice& dice, const Layout& layout, Board& board);

/// Brings lines of a plain board within a hair of each other: corners, slots, nut, ends, binding; any order of work.
void draw_near_board(Dice& dice, Board& board);

/// Adds inlays and pins a hair from touching, coinciding with or lying flush to what the board has. Stops early where
/// the board has no layout.
void draw_near(Dice& dice, Board& board);

/// Adds side dots that nearly meet floors, pockets or each other, and sanding.
void draw_near_extras(Dice& dice, Board& board);

}  // namespace sagitta::random_boards
