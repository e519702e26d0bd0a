#include "board/SlotCut.hpp"

#include <algorithm>
#include <iterator>

#include "board/Fields.hpp"

namespace sagitta {

SlotCut slot_cut(const Board& board) {
  return board.slots.cut.value_or(board.scale.frets == 0 ? SlotCut::none : SlotCut::all);
}

bool used_with_cut(const Field& field, SlotCut cut) {
  constexpr std::string_view measures[] = {"width", "depth", "floor", "ends", "edge_left"};
  if (field.table == "wire") return cut == SlotCut::all;
  if (field.table != "slots" || cut != SlotCut::none) return true;
  return std::ranges::find(measures, field.key) == std::end(measures);
}

}  // namespace sagitta
