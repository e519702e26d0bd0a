#pragma once

#include <string>

#include "inlay/Inlays.hpp"
#include "random/Judge.hpp"
#include "surface/Surface.hpp"

namespace sagitta::random_boards {

/// What is wrong with a piece as cut from its sheet, in the blank or in the finished board, empty when nothing is. The
/// volume is compared with quadrature where the piece is not artwork. Throws what a step throws.
std::string piece_trouble(const Board& board, const Layout& layout, const Surface& surface, const InlayPiece& piece,
                          Ways ways);

}  // namespace sagitta::random_boards
