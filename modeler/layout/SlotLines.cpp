#include "layout/SlotLines.hpp"

#include <algorithm>

#include "layout/Measure.hpp"
#include "layout/Taper.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

Slot slot_of(const Board& board, const FretLine& fret, Faults& faults) {
  Slot slot{fret.fret, fret.bass_edge, fret.treble_edge, board.slots.width, board.slots.ends == SlotEnds::blind};
  if (!slot.blind) return slot;
  const double whole = distance(slot.bass_end, slot.treble_end), left = whole - 2 * board.slots.edge_left;
  if (left <= slot.width + tolerance::snap) {
    faults.push_back({FaultCode::slot_too_short, "slots.edge_left",
                      "with " + in_units(board, board.slots.edge_left) + " left at each edge, " + slot_name(slot) +
                          (left > 0 ? " would be " + in_units(board, left) + " long, no longer than it is wide"
                                    : std::string(" would have no length")) +
                          "; the board is " + in_units(board, whole) + " wide there",
                      "leave less at the edges", id_of(slot)});
    return slot;
  }
  const Point along = unit(slot.treble_end - slot.bass_end);
  slot.bass_end = slot.bass_end + board.slots.edge_left * along;
  slot.treble_end = slot.treble_end - board.slots.edge_left * along;
  return slot;
}

/// One fault for all slots that meet: the first two of them, and how many more.
void check_gaps(const Board& board, const Layout& layout, Faults& faults) {
  const Slot *first_before = nullptr, *first = nullptr, *last = nullptr;
  double least = 0;
  int count = 0;
  for (std::size_t i = 1; i < layout.slots.size(); ++i) {
    const Slot &before = layout.slots[i - 1], &slot = layout.slots[i];
    const double wood = distance(slot_shape(layout, before), slot_shape(layout, slot));
    if (wood > tolerance::snap) continue;
    if (++count == 1) first_before = &before, first = &slot;
    last = &slot;
    least = std::min(least, wood);
  }
  if (count == 0) return;
  const std::string meeting = count == 1 ? slot_name(*first_before) + " and " + slot_name(*first)
                                         : std::to_string(count) + " pairs of slots, from " + slot_name(*first_before) +
                                               " to " + slot_name(*last) + ",";
  faults.push_back({FaultCode::slots_meet, "slots.width",
                    meeting + (least < -tolerance::snap
                                   ? (count == 1 ? " overlap by " : " overlap by up to ") + in_units(board, -least)
                                   : std::string(" leave no wood between them")),
                    "use fewer frets, a longer scale or a narrower slot", id_of(*first)});
}

}  // namespace

FeatureId id_of(const Slot& slot) { return {.kind = FeatureId::Kind::slot, .fret = slot.fret}; }

std::string slot_name(const Slot& slot) {
  return slot.fret == 0 ? "slot zero" : "the slot of fret " + std::to_string(slot.fret);
}

void place_slots(const Board& board, Layout& layout, Faults& faults) {
  const std::size_t before = faults.size();
  for (const FretLine& fret : layout.frets)
    if (fret.fret > 0 || board.scale.zero_fret) layout.slots.push_back(slot_of(board, fret, faults));
  if (faults.size() == before) check_gaps(board, layout, faults);
}

void take_slots(const Board& board, const std::vector<Slot>& slots, Layout& layout, Faults& faults) {
  layout.slots = slots;
  check_gaps(board, layout, faults);
}

RoundedPolygon slot_shape(const Layout& layout, const Slot& slot) {
  const Point along = slot.bass_end.x == slot.treble_end.x ? Point{0, slot.treble_end.y > slot.bass_end.y ? 1.0 : -1.0}
                                                           : unit(slot.treble_end - slot.bass_end);
  const double half = slot.width / 2;
  if (slot.blind) return {{slot.bass_end + half * along, slot.treble_end - half * along}, half};
  const Taper taper = taper_in(layout);
  const Point up = along.y > 0 ? along : -1.0 * along;
  const double middle = slot.bass_end.x - slot.bass_end.y * up.x / up.y, reach = half / up.y;
  return {{taper.meet(0, middle - reach, up), taper.meet(0, middle + reach, up), taper.meet(1, middle + reach, up),
           taper.meet(1, middle - reach, up)},
          0};
}

}  // namespace sagitta
