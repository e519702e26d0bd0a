#include <limits>

#include "findings/Families.hpp"
#include "layout/SlotLines.hpp"

namespace sagitta {
namespace {

void judge_width(const Subject& subject, Judge& judge) {
  const double room = subject.board.slots.width - subject.board.wire.tang_width;
  const Slot& first = subject.layout.slots.front();
  const Point at = between(first.bass_end, first.treble_end, 0.5);
  const Spot spot{at, subject.surface.height(at), "all slots"};
  const std::string sizes = "slots " + judge.shown(subject.board.slots.width) + " wide for a tang of " +
                            judge.shown(subject.board.wire.tang_width);
  const double least = judge.up(subject.board.wire.tang_width + judge.limit(rule("slot-too-tight")));
  const double most = judge.down(subject.board.wire.tang_width + judge.limit(rule("slot-too-loose")));
  judge.hold(rule("slot-too-tight"), room, spot,
             sizes + " are too tight: the frets bend the board backwards and chip the slots",
             "make slots.width at least " + judge.shown(least), Fix{"slots.width", least});
  judge.hold(rule("slot-too-loose"), room, spot, sizes + " are too loose: the frets lift out",
             "make slots.width at most " + judge.shown(most) + ", or glue the frets in", Fix{"slots.width", most});
}

void judge_depth(const Subject& subject, Judge& judge) {
  double least = std::numeric_limits<double>::infinity();
  Spot spot;
  for (const Slot& slot : subject.layout.slots)
    for (const Point p : {slot.bass_end, slot.treble_end, between(slot.bass_end, slot.treble_end, 0.5)}) {
      const double floor = slot_floor(subject, p), depth = subject.surface.height(p) - floor;
      if (depth < least) least = depth, spot = {p, floor, slot_name(slot)};
    }
  const Rule& shallow = rule("slot-too-shallow");
  const double room = least - subject.board.wire.tang_depth;
  const bool level = subject.board.slots.floor == SlotFloor::level;
  const std::string deep =
      least > 0 ? "is only " + judge.shown(least) + " deep at its end" : "misses the wood at its end";
  judge.hold(shallow, room, spot,
             spot.feature + " " + (level ? deep : "is only " + judge.shown(least) + " deep") + " and the tang is " +
                 judge.shown(subject.board.wire.tang_depth) + ": the fret will not sit down",
             (level ? "use slots.floor = \"arc\", or cut the slots " : "cut the slots ") +
                 judge.shown(judge.limit(shallow) - room) + " deeper",
             Fix{"slots.depth", judge.up(slot_depth(subject.board) + judge.limit(shallow) - room)});
}

}  // namespace

void judge_wire(const Subject& subject, Judge& judge) {
  if (subject.layout.slots.empty()) return;
  judge_width(subject, judge);
  judge_depth(subject, judge);
}

}  // namespace sagitta
