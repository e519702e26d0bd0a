#include "layout/SlotLines.hpp"

#include <algorithm>

#include "board/SlotCut.hpp"
#include "layout/Measure.hpp"
#include "layout/SlotParts.hpp"
#include "layout/Taper.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

Slot slot_of(const Board& board, const FretLine& fret, Faults& faults) {
  Slot slot{fret.fret, fret.bass_edge, fret.treble_edge, board.slots.width, board.slots.ends == SlotEnds::blind};
  slot.on_tongue = fret.on_tongue;
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

FeatureId id_of(const Slot& slot) {
  return {.kind = FeatureId::Kind::slot, .fret = slot.fret, .part = is_parted(slot) ? slot.part : -1};
}

double line_thickness(const Board& board) { return board.slots.line_thickness.value_or(board.slots.width); }

std::string slot_name(const Slot& slot) {
  const std::string name = slot.fret == 0 ? "slot zero" : "the slot of fret " + std::to_string(slot.fret);
  return is_parted(slot) ? "part " + std::to_string(slot.part + 1) + " of " + name : name;
}

Slot whole_slot(const Board& board, const Layout& layout, const Slot& part) {
  if (!is_parted(part)) return part;
  Faults none;
  return slot_of(board, layout.frets[static_cast<std::size_t>(part.fret)], none);
}

void place_slots(const Board& board, Layout& layout, Faults& faults) {
  const SlotCut cut = slot_cut(board);
  if (cut == SlotCut::none) return;
  const std::size_t before = faults.size();
  const double strip = line_thickness(board);
  if (cut == SlotCut::lines && strip > board.slots.width)
    faults.push_back({FaultCode::line_too_thick, "slots.line_thickness",
                      "strips " + in_units_up(board, strip) + " thick do not go into slots " +
                          in_units_down(board, board.slots.width) + " wide",
                      "take thinner strips, or make slots.width larger"});
  for (const FretLine& fret : layout.frets)
    if (fret.fret > 0 || board.scale.zero_fret) layout.slots.push_back(slot_of(board, fret, faults));
  if (faults.size() == before) check_gaps(board, layout, faults);
}

void take_slots(const Board& board, const std::vector<Slot>& slots, Layout& layout, Faults& faults) {
  layout.slots = slots;
  check_gaps(board, layout, faults);
}

namespace {

/// A line across a slot's end: the edge, the tongue's side, or square to the slot where the heel end cuts it.
LineSegment end_line(const Layout& layout, const Slot& slot, bool bass, Point up) {
  const Point end = bass ? slot.bass_end : slot.treble_end;
  if (bass ? slot.bass_open : slot.treble_open) return {end, end + left_of(up)};
  if (bass && slot.on_tongue) return {end, end + (layout.tongue->bass_side.b - layout.tongue->bass_side.a)};
  const bool low = (slot.bass_end.y < slot.treble_end.y) == bass;
  return {end, end + taper_in(layout).along(low ? 0 : 1)};
}

Point met(LineSegment line, Point on, Point along) {
  const Point way = line.b - line.a;
  return on + cross(line.a - on, way) / cross(along, way) * along;
}

/// The shape of a slot that does not run from edge to edge.
RoundedPolygon between_ends(const Layout& layout, const Slot& slot, Point up) {
  const bool bass_low = slot.bass_end.y < slot.treble_end.y;
  const LineSegment low = end_line(layout, slot, bass_low, up), high = end_line(layout, slot, !bass_low, up);
  const Point fore = slot.width / 2 * Point{up.y, -up.x};
  const Point left = slot.bass_end - fore, right = slot.bass_end + fore;
  return {{met(low, left, up), met(low, right, up), met(high, right, up), met(high, left, up)}, 0};
}

}  // namespace

RoundedPolygon slot_shape(const Layout& layout, const Slot& slot) {
  const Point along = slot.bass_end.x == slot.treble_end.x ? Point{0, slot.treble_end.y > slot.bass_end.y ? 1.0 : -1.0}
                                                           : unit(slot.treble_end - slot.bass_end);
  const double half = slot.width / 2;
  if (slot.blind) return {{slot.bass_end + half * along, slot.treble_end - half * along}, half};
  const Point up = along.y > 0 ? along : -1.0 * along;
  if (slot.on_tongue || is_parted(slot)) return between_ends(layout, slot, up);
  const Taper taper = taper_in(layout);
  const double middle = slot.bass_end.x - slot.bass_end.y * up.x / up.y, reach = half / up.y;
  return {{taper.meet(0, middle - reach, up), taper.meet(0, middle + reach, up), taper.meet(1, middle + reach, up),
           taper.meet(1, middle - reach, up)},
          0};
}

}  // namespace sagitta
