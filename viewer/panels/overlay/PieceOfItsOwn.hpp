#pragma once

/// One piece of an inlay made an inlay of its own, so that it is moved and sized alone.

#include "overlay/PictureState.hpp"

namespace sagitta::viewer {

/// Pieces of the inlay on the board.
std::size_t piece_count(const Inlay& inlay);
/// The board with the inlay's piece (or pair) at this fret as a new inlay, the last one; the same board where the inlay
/// has pieces at no other fret.
Board with_own_piece(Board board, std::size_t inlay, int fret);

/// Makes the chosen piece an inlay of its own, as one step of undo, and chooses that.
void make_own_piece(const HandState& state);
/// Over the picture while an inlay is chosen: how many of its pieces move together, and the button that takes this one
/// out.
void draw_piece_choice(const HandState& state);

}  // namespace sagitta::viewer
