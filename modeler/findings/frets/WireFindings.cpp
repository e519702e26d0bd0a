#include <algorithm>
#include <cmath>
#include <limits>

#include "board/Materials.hpp"
#include "board/SlotCut.hpp"
#include "frets/FretFamilies.hpp"
#include "frets/WireList.hpp"
#include "layout/SlotLines.hpp"
#include "layout/SlotParts.hpp"
#include "rules/Work.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

void judge_width(const Subject& subject, Judge& judge) {
  const Board& board = subject.prepared.board();
  const double tang = board.wire.tang_width;
  // The slot is as wide as it was measured; else as the widest cutter makes it, however narrow it was drawn.
  const double cut = board.measured.slot_width
                         ? board.slots.width
                         : std::max(board.slots.width, widest_cut(board, CutterUse::slot).value_or(0));
  const double room = cut - tang;
  const Slot& first = subject.prepared.layout().slots.front();
  const Point at = between(first.bass_end, first.treble_end, 0.5);
  const Spot spot{at, subject.prepared.surface().height(at), {Kind::slots}, "all slots"};
  const std::string sizes = "slots cut " + judge.shown(cut) + " wide for a tang of " + judge.shown(tang);
  const double least = judge.up(tang + judge.limit(rule("slot-too-tight")));
  const double most = judge.down(tang + judge.limit(rule("slot-too-loose")));
  const double firm = judge.up(tang + judge.limit(rule("slot-too-tight-in-composite")));
  const bool composite = material(board, board.blank.material).kind == MaterialKind::composite;
  if (!judge.hold(rule("slot-too-tight"), room, spot,
                  sizes + " are too tight: the frets bend the board backwards and chip the slots",
                  "make slots.width at least " + judge.shown(least), Fix{"slots.width", least}) &&
      composite)
    judge.hold(rule("slot-too-tight-in-composite"), room, spot,
               sizes + " are tight for " + board.blank.material + ", which does not give way to the tang as wood does",
               "make slots.width at least " + judge.shown(firm) + " and glue the frets in", Fix{"slots.width", firm});
  judge.hold(rule("slot-too-loose"), room, spot, sizes + " are too loose: the frets lift out",
             "make slots.width at most " + judge.shown(most) + ", or glue the frets in",
             cut > board.slots.width ? std::nullopt : std::optional(Fix{"slots.width", most}));
}

/// From where on a level floor is too shallow: "; from y = 12.3 mm outward", or nothing.
std::string shallow_from(const Subject& subject, double x, double depth, Judge& judge) {
  const double drop = slot_depth(subject.prepared.board()) - depth;
  if (subject.prepared.surface().flat || drop <= 0 || subject.prepared.board().slots.floor != SlotFloor::level)
    return {};
  const double radius = subject.prepared.surface().radius(x), y = std::sqrt(drop * (2 * radius - drop));
  return " (from " + judge.shown(y) + " off the centre line outward it is less than the tang)";
}

void judge_depth(const Subject& subject, Judge& judge) {
  double least = std::numeric_limits<double>::infinity();
  Spot spot;
  for (const Slot& slot : subject.prepared.layout().slots)
    for (const Point p : {slot.bass_end, slot.treble_end, between(slot.bass_end, slot.treble_end, 0.5)}) {
      const double floor = slot_floor(subject, p), depth = subject.prepared.surface().height(p) - floor;
      if (depth < least) least = depth, spot = {p, floor, id_of(slot), slot_name(slot)};
    }
  const Rule& shallow = rule("slot-too-shallow");
  const double room = least - subject.prepared.board().wire.tang_depth;
  const bool level = subject.prepared.board().slots.floor == SlotFloor::level;
  const std::string deep =
      least > 0 ? "is only " + judge.shown(least) + " deep at its end" : "misses the wood at its end";
  judge.hold(
      shallow, room, spot,
      spot.feature + " " + (level ? deep : "is only " + judge.shown(least) + " deep") + " and the tang is " +
          judge.shown(subject.prepared.board().wire.tang_depth) + ": the fret will not sit down" +
          shallow_from(subject, spot.at.x, subject.prepared.board().wire.tang_depth + judge.limit(shallow), judge),
      (level ? "use slots.floor = \"arc\", or cut the slots " : "cut the slots ") +
          judge.shown(judge.limit(shallow) - room) + " deeper",
      Fix{"slots.depth", judge.up(slot_depth(subject.prepared.board()) + judge.limit(shallow) - room)});
}

void judge_pieces(const Subject& subject, Judge& judge) {
  const Slot* shortest = nullptr;
  const auto length = [](const Slot& slot) { return distance(slot.bass_end, slot.treble_end); };
  for (const Slot& slot : subject.prepared.layout().slots)
    if (is_parted(slot) && (!shortest || length(slot) < length(*shortest))) shortest = &slot;
  if (!shortest) return;
  const Point at = between(shortest->bass_end, shortest->treble_end, 0.5);
  judge.hold(rule("short-fret-piece"), length(*shortest),
             {at, subject.prepared.surface().height(at), id_of(*shortest), slot_name(*shortest)},
             "the body end leaves " + judge.shown(length(*shortest)) + " of " + slot_name(*shortest) +
                 ": a tang so short has little hold",
             "move the body end with board.past_last_fret, or glue the piece in");
}

void judge_nip(const Subject& subject, Judge& judge) {
  const std::vector<WirePiece> list = wire_list(subject.prepared);
  const auto whole = std::find_if(list.rbegin(), list.rend(), [](const WirePiece& piece) { return !piece.part; });
  const WirePiece& last = whole == list.rend() ? list.back() : *whole;
  const Point end = subject.prepared.layout().frets[static_cast<std::size_t>(last.fret)].bass_edge;
  judge.hold(rule("tang-nipped"), last.nip_bass,
             {end,
              subject.prepared.surface().height(end),
              {.kind = Kind::fret, .fret = last.fret},
              "fret " + std::to_string(last.fret)},
             "the tang must be nipped back by " + judge.shown(last.nip_bass) +
                 " from the finished edge at each end: the slots do not reach it",
             "cut the wire to length first; with its overhang that is " +
                 judge.shown(last.nip_bass + subject.prepared.board().wire.overhang) + " from each cut end");
}

}  // namespace

void judge_wire(const Subject& subject, Judge& judge) {
  if (subject.prepared.layout().slots.empty() || slot_cut(subject.prepared.board()) != SlotCut::all) return;
  judge_width(subject, judge);
  judge_depth(subject, judge);
  judge_nip(subject, judge);
  judge_pieces(subject, judge);
}

}  // namespace sagitta
