#include "layout/Layout.hpp"

#include <algorithm>

#include "board/Cutters.hpp"
#include "layout/BlankPlace.hpp"
#include "layout/BoardOutline.hpp"
#include "layout/Frets.hpp"
#include "layout/Markers.hpp"
#include "layout/Measure.hpp"
#include "layout/Mirror.hpp"
#include "layout/NutPlace.hpp"
#include "layout/OwnPlaces.hpp"
#include "layout/SlotLines.hpp"
#include "layout/StringLines.hpp"
#include "layout/Taper.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double default_past_tang = 0.35;  ///< a slot is cut this much deeper than the tang
constexpr double default_behind_seat = 3;   ///< wood behind the nut's seat

void place_fall(const Board& board, Layout& layout, Faults& faults) {
  const auto& from = board.surface.fall_from_fret;
  if (from.has_value() != board.surface.fall.has_value()) {
    faults.push_back({FaultCode::missing_key, from ? "surface.fall" : "surface.fall_from_fret",
                      from ? "the fall-away has a fret to start from, but nothing says how far it falls"
                           : "nothing says from which fret the surface falls away",
                      "give both fall_from_fret and fall, or neither"});
    return;
  }
  if (!from) return;
  if (*from < 0 || *from > board.scale.frets) {
    faults.push_back({FaultCode::no_such_fret, "surface.fall_from_fret",
                      "there is no fret " + std::to_string(*from) + ": the board has frets 0 to " +
                          std::to_string(board.scale.frets),
                      ""});
    return;
  }
  layout.fall_start = layout.frets[static_cast<std::size_t>(*from)].middle.x;
  const double run = layout.heel_end - *layout.fall_start;
  if (run > tolerance::snap)
    layout.fall_slope = *board.surface.fall / run;
  else
    faults.push_back({FaultCode::no_room_to_fall, "surface.fall_from_fret",
                      "the fall-away begins at the heel end: it has no room to fall",
                      "start it at a lower fret, or make board.past_last_fret larger"});
}

void check_binding(const Board& board, const Layout& layout, Faults& faults) {
  if (!board.binding) return;
  const Taper taper = taper_in(layout);
  double narrowest = std::min(layout.half_width(layout.nut_end), layout.half_width(layout.heel_end));
  for (const CurveSegment& segment : layout.outline) narrowest = std::min(narrowest, layout.half_width(segment.a.x));
  const double stretch = (taper.stretch(0) + taper.stretch(1)) / 2;
  if (board.binding->width * stretch < narrowest - tolerance::snap) return;
  faults.push_back({FaultCode::binding_too_wide, "binding.width",
                    "two bindings of " + in_units(board, board.binding->width) + " leave nothing of a board that is " +
                        in_units(board, 2 * narrowest) + " wide at its narrowest",
                    "use a narrower binding"});
}

/// Everything that needs the board's edges. `own`: slots and markers that are not the board's; may be null.
void place_on_edges(const Board& board, const OwnPlaces* own, const Taper& taper, Layout& layout, Faults& faults) {
  layout.edge_at_nut = taper.at_nut;
  layout.edge_slope = taper.slope;
  layout.half_width_at_nut = (taper.at_nut[0] + taper.at_nut[1]) / 2;
  layout.half_width_slope = (taper.slope[0] + taper.slope[1]) / 2;
  if (!extend_frets(taper, layout, faults)) return;
  const bool drawn = draw_outline(board, taper, layout, faults);
  const std::size_t before = faults.size();
  own ? take_slots(board, own->slots, layout, faults) : place_slots(board, layout, faults);
  const bool slots_sound = faults.size() == before;
  layout.markers = own ? own->markers : place_markers(board, layout, faults);
  if (slots_sound) layout.nut = place_nut(board, layout, faults);
  if (!drawn) return;
  if (slots_sound) check_ends(board, layout, faults);
  layout.side_dots = place_side_dots(board, layout, faults);
  check_binding(board, layout, faults);
}

std::variant<Layout, Faults> laid_out(const Board& board, const OwnPlaces* own) {
  Layout layout;
  Faults faults;
  if (!place_frets(board, layout, faults)) return faults;
  layout.strings = place_strings(board, layout, faults);
  layout.nut_end = -behind_nut(board);
  layout.heel_end = layout.frets.back().middle.x + board.board.past_last_fret;
  const auto taper = taper_of(board, layout, faults);
  place_fall(board, layout, faults);
  if (!taper) return faults;
  place_on_edges(board, own, *taper, layout, faults);
  layout.pins = place_pins(board);
  if (board.hand == Hand::left) layout = mirrored(std::move(layout));
  if (!layout.outline.empty()) place_blank(board, layout, faults);
  if (!faults.empty()) return faults;
  return layout;
}

}  // namespace

double slot_depth(const Board& board) { return board.slots.depth.value_or(board.wire.tang_depth + default_past_tang); }

double behind_nut(const Board& board) {
  return board.board.behind_nut.value_or(board.nut.seat == NutSeat::none ? 0 : board.nut.width + default_behind_seat);
}

double inlay_cutter_radius(const Board& board) {
  const auto radius = [&](CutterUse use) { return narrowest_cut(board, use).value_or(0) / 2; };
  const double detail = radius(CutterUse::pocket_detail);
  return std::max(detail > 0 ? detail : radius(CutterUse::pocket_clear), radius(CutterUse::piece));
}

std::variant<Layout, Faults> lay_out(const Board& board) { return laid_out(board, nullptr); }
std::variant<Layout, Faults> lay_out(const Board& board, const OwnPlaces& own) { return laid_out(board, &own); }

}  // namespace sagitta
