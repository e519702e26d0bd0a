#pragma once

/// What is cut at the frets' places: slots for wire, slots for lines, or nothing.

#include "board/Board.hpp"

namespace sagitta {

struct Field;

/// slots.cut, with its default resolved: all, or none on a board without frets.
SlotCut slot_cut(const Board& board);

/// Whether a key says something where the places are cut so: [wire] belongs to slots for wire, a slot's own measures
/// to slots of either kind. True for keys of other things.
bool used_with_cut(const Field& field, SlotCut cut);

}  // namespace sagitta
