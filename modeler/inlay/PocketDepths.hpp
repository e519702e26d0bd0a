#pragma once

/// Pockets and pieces as they were measured.

#include <vector>

#include "inlay/Inlays.hpp"

namespace sagitta {

/// The depth of the piece's pocket and the piece's own thickness as measured.pocket_depths (by the piece's name) and
/// measured.piece_thickness (by material) have them. A piece whose thickness follows its pocket's depth follows the
/// measured one.
void take_measured(const Board& board, InlayPiece& piece);

/// A marker's pockets, drawn for `planned` depth, by the depths of its pieces. Pockets that run together have one
/// floor, that of the deepest.
std::vector<Pocket> by_depth(const Pocket& whole, double planned, const std::vector<const InlayPiece*>& pieces);

/// Names that no piece has, materials that no piece is of, and pockets measured so deep that less than
/// tolerance::least_floor is left under them.
Faults measured_faults(const Board& board, const Inlays& inlays);

}  // namespace sagitta
