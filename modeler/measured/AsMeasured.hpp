#pragma once

/// The board as it was measured: what has been cut is what it is, and everything that follows is planned anew from it.

#include <set>
#include <variant>

#include "board/Board.hpp"
#include "board/Problem.hpp"

namespace sagitta {

/// The planned board with what [measured] says in place of what was planned, where the two differ by more than
/// tolerance::same:
///  - blank_thickness in place of blank.thickness; tape in every set-up; slot_width in place of slots.width;
///  - thickness: the mean of measured less planned (the playing surface with what sanding will take, at each place) is
///    added to board.thickness. Floors that have been cut stay at their heights above the glue face: the depths of
///    pockets, nut seat and slots change by as much, pieces keep their thickness;
///  - widths: measured less planned width, a straight line in x by least squares (one place: the same everywhere), is
///    added to the width, half at each edge.
/// pocket_depths and piece_thickness are taken when the pieces have their names (inlay/Inlays). `slots` and `chips`
/// move nothing: findings judge them. Applied to its own result it changes nothing.
/// Faults: what keeps the planned board from being laid out, and places that lie beside the board.
std::variant<Board, Faults> as_measured(const Board& planned);

/// What must have been cut when all of this was measured: the operations of measured.done, those that a measured value
/// comes from (pocket depths: pockets; thickness: radius; slots and their width: slots; widths: outline), and
/// everything before one of these in work.order.
std::set<Operation> cut_when_measured(const Board& board);

}  // namespace sagitta
