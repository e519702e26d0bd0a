#include "layout/NutPlace.hpp"

#include "layout/Measure.hpp"
#include "layout/SlotLines.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

void check_back(const Board& board, const Layout& layout, const NutGround& nut, Faults& faults) {
  const double over = layout.nut_end - nut.back.x;
  if (nut.shelf && nut.face.x <= layout.nut_end + tolerance::snap)
    faults.push_back({FaultCode::nut_over_end, "board.behind_nut",
                      "the shelf for the nut begins " + in_units(board, std::abs(nut.face.x)) +
                          (nut.face.x > 0 ? " before" : " behind") + " the nut line, but the board ends " +
                          in_units(board, -layout.nut_end) + " behind it: there is no shelf",
                      "make board.behind_nut at least " + in_units_up(board, -nut.face.x + board.nut.width)});
  else if (!nut.shelf && over > tolerance::same)
    faults.push_back(
        {FaultCode::nut_over_end, "board.behind_nut",
         "the nut's slot reaches " + in_units(board, -nut.back.x) + " behind the nut line, but the board ends " +
             in_units(board, -layout.nut_end) + " behind it",
         "make board.behind_nut at least " + in_units_up(board, -nut.back.x) + ", or choose nut.seat = \"shelf\""});
}

/// The face of a compensated nut may not stand in the first fret's slot.
void check_face(const Board& board, const Layout& layout, const NutGround& nut, Faults& faults) {
  const Point forward = -1.0 * left_of(nut.direction);
  for (const Slot& slot : layout.slots) {
    const double room = -support(slot_shape(layout, slot), -1.0 * forward) - dot(forward, nut.face);
    if (slot.fret == 0 || room > tolerance::snap) continue;
    faults.push_back(
        {FaultCode::nut_in_slot, "nut.compensation",
         "the nut's face, moved " + in_units(board, nut.face.x) + " toward the bridge, stands in " + slot_name(slot),
         "compensation is usually below " + in_units(board, 2), id_of(slot)});
    return;
  }
}

}  // namespace

std::optional<NutGround> place_nut(const Board& board, const Layout& layout, Faults& faults) {
  const Nut& spec = board.nut;
  if (spec.seat == NutSeat::none) return std::nullopt;
  NutGround nut;
  nut.direction = layout.nut_direction;
  nut.face = {board.scale.zero_fret ? -spec.distance : spec.compensation, 0};
  nut.back = {nut.face.x - spec.width, 0};
  nut.shelf = spec.seat == NutSeat::shelf;
  nut.depth = spec.depth;
  check_back(board, layout, nut, faults);
  check_face(board, layout, nut, faults);
  return nut;
}

}  // namespace sagitta
