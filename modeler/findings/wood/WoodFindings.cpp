#include <algorithm>
#include <limits>

#include "board/SlotCut.hpp"
#include "layout/BoardOutline.hpp"
#include "layout/SlotLines.hpp"
#include "layout/SlotParts.hpp"
#include "layout/Taper.hpp"
#include "plan/Feature.hpp"
#include "rules/Subject.hpp"
#include "wood/WoodFamilies.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

/// Stations along an edge; its height is smooth, and least at an end or where the fall begins.
constexpr int stations = 64;

constexpr double high = std::numeric_limits<double>::infinity();

void judge_edges(const Subject& subject, Judge& judge) {
  Spot spot;
  double least = high;
  const auto look = [&](Point p, int side) {
    const double height = subject.prepared.surface().height(p);
    if (height < least)
      least = height, spot = {p,
                              height,
                              {.kind = Kind::edge, .part = side},
                              side == FeatureId::lower ? "the lower edge" : "the upper edge"};
  };
  for (const LineSegment& edge : subject.prepared.layout().edges)
    for (int i = 0; i <= stations; ++i)
      look(between(edge.a, edge.b, 1.0 * i / stations), edge.a.y < 0 ? FeatureId::lower : FeatureId::upper);
  const Taper taper = taper_in(subject.prepared.layout());
  const auto lower = [&](double x) { return subject.prepared.surface().height(x, taper.larger_edge(x)); };
  const double nut = lower(0), heel = lower(subject.prepared.layout().heel_end);
  judge.hold(
      rule("thin-edge"), least, spot,
      "the edge is only " + judge.shown(least) + " high (" + judge.shown(nut) + " at the nut, " + judge.shown(heel) +
          " at the body end" +
          (subject.prepared.board().sanding > 0 ? "; as cut " + judge.shown(subject.prepared.board().sanding) + " more"
                                                : "") +
          "): little is left to hold side dots and the fret ends",
      "make the board " + judge.shown(judge.limit(rule("thin-edge")) - least) + " thicker, or the surface flatter",
      Fix{"board.thickness", judge.up(subject.prepared.surface().thickness + judge.limit(rule("thin-edge")) - least)});
}

void judge_under_slots(const Subject& subject, Judge& judge) {
  Spot spot;
  double least = high;
  for (const Slot& slot : subject.prepared.layout().slots)
    for (const Point end : {slot.bass_end, slot.treble_end, between(slot.bass_end, slot.treble_end, 0.5)}) {
      const double left = slot_floor(subject, end);
      if (left < least) least = left, spot = {end, left, id_of(slot), slot_name(slot)};
    }
  if (subject.prepared.layout().slots.empty()) return;
  const double lack = judge.limit(rule("thin-under-slot")) - least;
  const double shallow = judge.down(slot_depth(subject.prepared.board()) - lack);
  const double thick = judge.up(subject.prepared.surface().thickness + lack);
  const bool lines = slot_cut(subject.prepared.board()) == SlotCut::lines;
  judge.hold(rule("thin-under-slot"), least, spot,
             "under " + spot.feature + " only " + judge.shown(least) + " of wood is left: the board may break there",
             "cut the slots " + judge.shown(lack) + " shallower, or make the board thicker by as much",
             lines || shallow >= subject.prepared.board().wire.tang_depth ? Fix{"slots.depth", shallow}
                                                                          : Fix{"board.thickness", thick});
}

/// Lowest floor of the slots that cross a pocket, within it; nothing where none does.
std::optional<double> slots_across(const Subject& subject, const LetPiece& let) {
  std::optional<double> lowest;
  for (const Slot& slot : subject.prepared.layout().slots)
    for (const Polygon& polygon : let.taken(outline(slot_shape(subject.prepared.layout(), slot))))
      for (const Point p : polygon) lowest = std::min(lowest.value_or(high), slot_floor(subject, p));
  return lowest;
}

/// The lowest floor of a pocket, or of a slot within one.
struct LowFloor {
  double floor = high;
  bool slotted = false;
  int inlay = 0;
  Point at;
  FeatureId where;
  std::string name;
};

LowFloor lowest_pocket(const Subject& subject) {
  LowFloor low;
  for (const LetPiece& let : subject.let) {
    const double pocket = let.floor(), floor = std::min(pocket, slots_across(subject, let).value_or(high));
    if (floor < low.floor) low = {floor, floor < pocket, let.piece().inlay, let.middle(), let.where(), let.name()};
  }
  return low;
}

void judge_under_pockets(const Subject& subject, Judge& judge) {
  const LowFloor low = lowest_pocket(subject);
  if (low.floor == high) return;
  const double lack = judge.limit(rule("thin-under-pocket")) - low.floor;
  const double depth = subject.prepared.board().inlays[static_cast<std::size_t>(low.inlay)].depth;
  const std::string key = "inlays[" + std::to_string(low.inlay) + "].depth";
  judge.hold(rule("thin-under-pocket"), low.floor, {low.at, low.floor, low.where, low.name},
             "under the pocket of " + low.name + " only " + judge.shown(low.floor) + " of wood is left" +
                 (low.slotted ? ", where a slot deeper than the pocket crosses it" : ""),
             (low.slotted ? "cut the slots " : "make the pocket ") + judge.shown(lack) +
                 (low.slotted ? " shallower" : " shallower and take thinner pieces"),
             low.slotted ? Fix{"slots.depth", judge.down(slot_depth(subject.prepared.board()) - lack)}
                         : Fix{key, judge.down(depth - lack)});
}

void judge_under_nut(const Subject& subject, Judge& judge) {
  if (!subject.prepared.layout().nut) return;
  const Layout& layout = subject.prepared.layout();
  const Point face = layout.nut->face;
  double left = high;  // a floor that follows the surface is lowest at an edge
  for (const int side : {0, 1})
    left = std::min(left, seat_floor(subject, {face.x, (side == 0 ? -1 : 1) * layout.edge(side, face.x)}));
  const double lack = judge.limit(rule("thin-under-nut")) - left;
  judge.hold(rule("thin-under-nut"), left,
             {subject.prepared.layout().nut->face, left, {Kind::nut_seat}, "the nut's seat"},
             "under the nut's seat only " + judge.shown(left) + " of wood is left: the end may break off",
             "make nut.depth " + judge.shown(lack) + " less",
             Fix{"nut.depth", judge.down(subject.prepared.board().nut.depth - lack)});
}

/// Moving the heel end by d along the board adds d wood behind the last slot, times how square the end lies to it. None
/// where a curve may be what is nearest.
std::optional<Fix> longer_end(const Subject& subject, const Slot& slot, double lack, const Judge& judge) {
  const Shape& shape = subject.prepared.board().board;
  if (slot.on_tongue || shape.corner_radius > 0 || (shape.heel != Heel::square && shape.heel != Heel::fret)) return {};
  const double gained = shape.heel == Heel::fret ? std::abs(unit(slot.treble_end - slot.bass_end).y) : 1;
  return Fix{"board.past_last_fret", judge.up(shape.past_last_fret + lack / gained)};
}

/// The last slot that no end cuts, of the main board or of its tongue: the one with less wood behind it.
const Slot* thinnest_behind(const Subject& subject) {
  const Layout& layout = subject.prepared.layout();
  const Slot* found = nullptr;
  for (const bool on_tongue : {false, true}) {
    const auto last = std::find_if(layout.slots.rbegin(), layout.slots.rend(),
                                   [&](const Slot& slot) { return slot.on_tongue == on_tongue && !is_parted(slot); });
    if (last == layout.slots.rend()) continue;
    const auto wood = [&](const Slot& slot) { return wood_behind(subject.prepared.board(), layout, slot).wood; };
    if (!found || wood(*last) < wood(*found)) found = &*last;
  }
  return found;
}

void judge_behind_last_slot(const Subject& subject, Judge& judge) {
  const Slot* found = thinnest_behind(subject);
  if (!found) return;
  const Slot& last = *found;
  const EndWood behind = wood_behind(subject.prepared.board(), subject.prepared.layout(), last);
  const double lack = judge.limit(rule("wood-behind-last-slot")) - behind.wood;
  const std::string name = slot_name(last);
  judge.hold(rule("wood-behind-last-slot"), behind.wood,
             {behind.at, subject.prepared.surface().height(behind.at), id_of(last), name},
             behind.wood > 0 ? "between " + name + " and the body end only " + judge.shown(behind.wood) +
                                   " of wood is left: the strip breaks off"
                             : "the body end takes " + judge.shown(-behind.wood) + " off " + name,
             std::string("make ") + (last.on_tongue ? "tongue" : "board") + ".past_last_fret " + judge.shown(lack) +
                 " larger" +
                 (subject.prepared.board().board.corner_radius > 0 ? ", or board.corner_radius smaller" : ""),
             longer_end(subject, last, lack, judge));
}

}  // namespace

void judge_wood(const Subject& subject, Judge& judge) {
  judge_edges(subject, judge);
  judge_under_slots(subject, judge);
  judge_under_pockets(subject, judge);
  judge_under_nut(subject, judge);
  judge_behind_last_slot(subject, judge);
}

}  // namespace sagitta
