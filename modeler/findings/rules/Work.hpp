#pragma once

/// What the order of work, the set-ups and the cutters of a board come to.

#include "board/Cutters.hpp"
#include "rules/Subject.hpp"

namespace sagitta {

/// Whether `a` is done before `b`. The board must do both.
bool comes_before(const Board& board, Operation a, Operation b);
/// Height of the wood on the centre line when the operation begins: the blank's, or what it is milled to first, until
/// the radius is cut.
double top_before(const Subject& subject, Operation operation);
/// The set-up that does the operation; null when none is named for it.
const Setup* setup_of(const Board& board, Operation operation);
/// What the wall between two cuts may lose because the work is clamped anew between them.
double reclamp_loss(const Board& board, Operation a, Operation b);
/// How far a piece of so thick a sheet, in a pocket so deep, stands above the wood round it when the slots are cut
/// through it at p.
double proud_at(const Subject& subject, double depth, double thickness, Point p);
/// "pockets", "inlay", ..
std::string_view operation_name(Operation operation);

/// Height of the lowest floor cut from above at a point: surface, slots, pockets, the builder's own cuts, nut seat.
double lowest_floor(const Subject& subject, Point p);

}  // namespace sagitta
