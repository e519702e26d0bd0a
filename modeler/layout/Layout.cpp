#include "layout/Layout.hpp"

#include <algorithm>
#include <numeric>

#include "board/Cutters.hpp"
#include "board/SlotCut.hpp"
#include "layout/BlankPlace.hpp"
#include "layout/BoardOutline.hpp"
#include "layout/DrawnEnd.hpp"
#include "layout/Frets.hpp"
#include "layout/LastFret.hpp"
#include "layout/Markers.hpp"
#include "layout/Measure.hpp"
#include "layout/Mirror.hpp"
#include "layout/NutPlace.hpp"
#include "layout/OwnPlaces.hpp"
#include "layout/SlotLines.hpp"
#include "layout/SlotParts.hpp"
#include "layout/StringLines.hpp"
#include "layout/Taper.hpp"
#include "layout/TongueOutline.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double default_past_tang = 0.35;  ///< a slot is cut this much deeper than the tang
constexpr double default_line_depth = 1.5;  ///< of a slot for a strip
constexpr double default_behind_seat = 3;   ///< wood behind the nut's seat
constexpr double default_left_on = 0.3;     ///< what thicknessing leaves on the board for the radius

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
  if (*from < 0 || *from > board.scale.frets || board.scale.frets == 0) {
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
  const double stretch = (taper.stretch(0) + taper.stretch(1)) / 2, ledge = ledge_width(*board.binding);
  if (ledge * stretch < narrowest - tolerance::snap) return;
  faults.push_back(
      {FaultCode::binding_too_wide, "binding.width",
       "two bindings of " + in_units(board, ledge) + (board.binding->lines.empty() ? "" : " with their lines") +
           " leave nothing of a board that is " + in_units(board, 2 * narrowest) + " wide at its narrowest",
       "use a narrower binding"});
}

/// A marker of a space that the heel end cuts must stand on wood.
void check_markers(const Board& board, const Layout& layout, Faults& faults) {
  if (!board.board.ends_cut_slots) return;
  for (const Marker& marker : layout.markers) {
    if (winding(layout.outline, marker.centre) != 0) continue;
    faults.push_back({FaultCode::off_board, "inlays[" + std::to_string(marker.inlay) + "].frets",
                      "the middle of the marker in space " + std::to_string(marker.fret) + " lies beyond the heel end",
                      "leave it out, or move it with shift_along and shift_across", id_of(marker)});
  }
}

/// What is given to the layout besides the board; either may be null.
struct Given {
  const OwnPlaces* own = nullptr;  ///< slots and markers that are not the board's
  const DrawnEnd* end = nullptr;
};

void place_all_slots(const Board& board, const Given& given, bool drawn, Layout& layout, Faults& faults) {
  if (given.own) return take_slots(board, given.own->slots, layout, faults);
  const std::size_t before = faults.size();
  place_slots(board, layout, faults);
  if (faults.size() != before || !drawn) return;
  if (layout.tongue) check_tongue_slots(board, layout, faults);
  if (board.board.ends_cut_slots) part_slots(board, layout, faults);
}

/// Everything that needs the board's edges.
void place_on_edges(const Board& board, const Given& given, const Taper& taper, Layout& layout, Faults& faults) {
  layout.edge_at_nut = taper.at_nut;
  layout.edge_slope = taper.slope;
  layout.half_width_at_nut = (taper.at_nut[0] + taper.at_nut[1]) / 2;
  layout.half_width_slope = (taper.slope[0] + taper.slope[1]) / 2;
  if (board.tongue) {
    const auto tongue = place_tongue(board, layout, taper, faults);
    if (!tongue) return;
    layout.tongue = tongue;
  }
  if (!extend_frets(taper, layout, faults)) return;
  const bool drawn = draw_outline(board, given.end, taper, layout, faults);
  const std::size_t before = faults.size();
  place_all_slots(board, given, drawn, layout, faults);
  const bool slots_sound = faults.size() == before;
  layout.markers = given.own ? given.own->markers : place_markers(board, layout, faults);
  if (slots_sound) layout.nut = place_nut(board, layout, faults);
  if (!drawn) return;
  if (slots_sound) check_ends(board, layout, faults);
  check_markers(board, layout, faults);
  layout.side_dots = place_side_dots(board, layout, faults);
  check_binding(board, layout, faults);
}

std::variant<Layout, Faults> laid_out(const Board& board, const Given& given) {
  Layout layout;
  Faults faults;
  if (!place_frets(board, layout, faults)) return faults;
  layout.strings = place_strings(board, layout, faults);
  layout.nut_end = -behind_nut(board);
  layout.heel_end = last_fret(layout).middle.x + board.board.past_last_fret;
  if (layout.heel_end <= tolerance::snap) {
    faults.push_back({FaultCode::heel_meets_nut, "board.past_last_fret",
                      "the heel end lies at x = " + in_units(board, layout.heel_end) + ", not beyond the nut line",
                      "make board.past_last_fret larger"});
    return faults;
  }
  const auto taper = taper_of(board, layout, faults);
  place_fall(board, layout, faults);
  if (!taper) return faults;
  place_on_edges(board, given, *taper, layout, faults);
  layout.pins = place_pins(board);
  if (board.hand == Hand::left) layout = mirrored(std::move(layout));
  if (!layout.outline.empty()) place_blank(board, layout, faults);
  if (!faults.empty()) return faults;
  return layout;
}

}  // namespace

double slot_depth(const Board& board) {
  return board.slots.depth.value_or(slot_cut(board) == SlotCut::lines ? default_line_depth
                                                                      : board.wire.tang_depth + default_past_tang);
}

double behind_nut(const Board& board) {
  return board.board.behind_nut.value_or(board.nut.seat == NutSeat::none ? 0 : board.nut.width + default_behind_seat);
}

bool has_thickness(const Board& board) { return !board.order.empty() && board.order.front() == Operation::thickness; }

double thickness_to(const Board& board) {
  return board.thickness_to.value_or(board.board.thickness + board.sanding + default_left_on);
}

double raw_top(const Board& board, const Layout& layout) {
  return has_thickness(board) ? thickness_to(board) : layout.blank_thickness;
}

double ledge_width(const Binding& binding) {
  return std::accumulate(binding.lines.begin(), binding.lines.end(), binding.width);
}

double inlay_cutter_radius(const Board& board) {
  const auto radius = [&](CutterUse use) { return narrowest_cut(board, use).value_or(0) / 2; };
  const double detail = radius(CutterUse::pocket_detail);
  return std::max(detail > 0 ? detail : radius(CutterUse::pocket_clear), radius(CutterUse::piece));
}

std::variant<Layout, Faults> lay_out(const Board& board) { return laid_out(board, {}); }
std::variant<Layout, Faults> lay_out(const Board& board, const OwnPlaces& own) {
  return laid_out(board, {&own, nullptr});
}
std::variant<Layout, Faults> lay_out(const Board& board, const DrawnEnd& end) {
  return laid_out(board, {nullptr, &end});
}

}  // namespace sagitta
