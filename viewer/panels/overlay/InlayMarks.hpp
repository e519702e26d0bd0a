#pragma once

/// Marks about inlays: what cutters do not reach, and how thick a piece will be.

#include "overlay/PictureState.hpp"
#include "widgets/Labels.hpp"

namespace sagitta::viewer {

/// What the cutters cannot reach of each drawing, shaded where it lies on the board.
void draw_lost(const PictureState& state);
/// While the pieces are shaded by what is left of them: the piece under the pointer and its thickness there.
void draw_piece_reading(const PictureState& state, Labels& labels);

/// The piece that lies at a place of the board, seen from above; null where none does.
const InlayPiece* piece_at(const Inlays& inlays, Point place);
/// What will be left of it there, mm; less than nothing where it is sanded through.
double left_of_piece(const InlayPiece& piece, const Surface& surface, Point place);

}  // namespace sagitta::viewer
