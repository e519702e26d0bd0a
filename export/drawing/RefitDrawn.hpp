#pragma once

/// New pieces for pockets that are already cut.

#include <string>
#include <vector>

#include "board/Board.hpp"
#include "inlay/Inlays.hpp"

namespace sagitta {

/// Pieces of drawings made anew for pockets that are cut already: with `clearance` (mm) of room instead of their
/// inlay's. Every outline moves by the difference, but for inner corners that the piece's cutter could then not make:
/// these stay where they were, with more room. Pieces that are made anew together keep `clearance` between each other.
/// Gives the name of a piece of which nothing whole is left, or nothing.
std::string refit_drawn(const Board& board, const std::vector<InlayPiece*>& pieces, double clearance);

}  // namespace sagitta
