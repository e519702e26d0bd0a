#pragma once

/// Which material each colour of a drawing is cut from.

#include <string>
#include <vector>

#include "artwork/Artwork.hpp"
#include "board/Board.hpp"

namespace sagitta {

/// The colours of the drawing, each once, in the order of the regions.
std::vector<std::string> colours_of(const Artwork& artwork);

/// What the inlay says of a colour ("#rrggbb"): in `colours`, else `material`.
std::string material_of(const Inlay& inlay, const std::string& colour);

/// What is wrong between Board::inlays[index] and its drawing: a drawing of several colours where `colours` does not
/// name one of them, a colour that the drawing does not have, and, on a board with sheets, a material without one. The
/// messages list the colours found.
Faults material_faults(const Board& board, std::size_t index, const Artwork& artwork);

}  // namespace sagitta
