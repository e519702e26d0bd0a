#include <algorithm>
#include <limits>

#include "layout/SlotLines.hpp"
#include "rules/Work.hpp"
#include "wood/WoodFamilies.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

/// A crown sits flat only on the land. On a fan it covers more along the board than across itself.
void judge_lands(const Subject& subject, Judge& judge) {
  const Board& board = subject.prepared.board();
  if (!board.scallop || subject.prepared.surface().scallops.empty()) return;
  double least = std::numeric_limits<double>::infinity(), need = 0;
  Spot spot;
  for (const Slot& slot : subject.prepared.layout().slots) {
    if (slot.fret < board.scallop->from_fret || slot.fret > board.scallop->to_fret) continue;
    const double half = board.wire.crown_width / 2 / std::abs(unit(slot.treble_end - slot.bass_end).y);
    if (board.scallop->land - half >= least) continue;
    least = board.scallop->land - half;
    need = half + judge.limit(rule("land-under-crown"));
    const Point middle = between(slot.bass_end, slot.treble_end, 0.5);
    spot = {middle, subject.prepared.surface().height(middle), id_of(slot), slot_name(slot)};
  }
  if (need == 0) return;
  judge.hold(rule("land-under-crown"), least, spot,
             "the land beside " + spot.feature + " is " + judge.shown(board.scallop->land) +
                 " wide and half the wire's crown " + judge.shown(board.scallop->land - least) +
                 ": the crown stands over the scallop",
             "make scallop.land at least " + judge.shown(need), Fix{"scallop.land", judge.up(need)});
}

/// Where the slot is at its end, a worked edge may be lower than its floor.
void judge_slot_ends(const Subject& subject, Judge& judge) {
  const Surface& surface = subject.prepared.surface();
  double least = std::numeric_limits<double>::infinity();
  Spot spot;
  for (const Slot& slot : subject.prepared.layout().slots)
    for (const Point end : {slot.bass_end, slot.treble_end})
      for (const WorkedEdge& edge : surface.worked_edges) {
        const std::optional<double> worked = surface.worked_height(edge, end);
        const double floor = slot_floor(subject, end);
        if (!worked || *worked - floor >= least) continue;
        least = *worked - floor;
        spot = {end, *worked, id_of(slot), slot_name(slot)};
      }
  if (spot.feature.empty()) return;
  const bool roll = surface.worked_edges.front().roll > 0;
  judge.hold(rule("edge-below-slot"), least, spot,
             std::string(roll ? "the roll" : "the bevel") + " goes " + judge.shown(-least) + " below the floor of " +
                 spot.feature + " at its end: the tang shows in the worked edge",
             std::string("make the ") + (roll ? "roll smaller" : "bevel narrower") + ", or the slots deeper");
}

}  // namespace

void judge_forms(const Subject& subject, Judge& judge) {
  judge_lands(subject, judge);
  judge_slot_ends(subject, judge);
}

}  // namespace sagitta
