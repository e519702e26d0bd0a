#include <algorithm>

#include "board/Materials.hpp"
#include "rules/ShownMeasures.hpp"
#include "rules/Work.hpp"
#include "wood/Weight.hpp"
#include "wood/WoodFamilies.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

/// An outline cutter where none is named: 1/4 in. mm.
constexpr double usual_cutter = 6.35;

/// How many boards of this size one way of the blank holds, with `gap` between two and `spare` at each end.
int fit(double blank, double board, double gap, double spare) {
  return std::max(1, static_cast<int>((blank - 2 * spare + gap) / (board + gap)));
}

void judge_yield(const Subject& subject, Judge& judge) {
  const Box board = bounds(subject.prepared.layout().outline), &blank = subject.prepared.layout().blank;
  // The radius is cut beyond each board: it may reach neither the next one nor past the blank.
  const double overrun = board.low.x - subject.prepared.layout().strip.low.x;
  const double gap = std::max(overrun, widest_cut(subject.prepared.board(), CutterUse::outline).value_or(usual_cutter));
  const Point size = board.high - board.low, stock = blank.high - blank.low;
  const int along = fit(stock.x, size.x, gap, std::max(overrun, judge.limit(rule("blank-short"))));
  const int across = fit(stock.y, size.y, gap, std::max(overrun, judge.limit(rule("blank-narrow"))));
  judge.hold(rule("several-boards"), along * across,
             {blank.low, subject.prepared.layout().blank_thickness, {Kind::blank}, "the blank"},
             "the blank holds " + std::to_string(along * across) + " boards, " + std::to_string(along) +
                 " along it and " + std::to_string(across) + " across, with " + judge.shown(gap) + " between them",
             "place each with blank.at, or saw the blank first");
}

/// Blank at an end that no cut reaches, for clamps.
void judge_clamps(const Subject& subject, Judge& judge) {
  const Box &strip = subject.prepared.layout().strip, &blank = subject.prepared.layout().blank;
  const double nut = strip.low.x - blank.low.x, heel = blank.high.x - strip.high.x, least = std::min(nut, heel);
  judge.hold(rule("little-clamp-room"), least,
             {{nut < heel ? blank.low.x : blank.high.x, 0},
              subject.prepared.layout().blank_thickness,
              {Kind::blank},
              "the blank"},
             "beyond the radius cut the blank reaches only " + judge.shown(least) + " at the " +
                 (nut < heel ? "nut" : "body") + " end: a clamp there stands in the cutter's way",
             "hold the blank with tape, from below, or take a longer one");
}

void judge_room(const Subject& subject, double spare, Judge& judge) {
  const auto cut = widest_cut(subject.prepared.board(), CutterUse::outline);
  if (!cut) return;
  judge.hold(
      rule("no-room-for-outline-cutter"), spare - *cut,
      {subject.prepared.layout().blank.low, subject.prepared.layout().blank_thickness, {Kind::blank}, "the blank"},
      "the outline cutter takes " + judge.shown(*cut) + " beside the board, and the blank has " + judge.shown(spare) +
          " to spare: nothing is left round the board for tabs and clamps",
      "take a larger blank or a thinner outline cutter");
}

void judge_weight(const Subject& subject, Judge& judge) {
  const Weights weights = weights_of(subject.prepared);
  const bool known = material(subject.prepared.board(), subject.prepared.board().blank.material).known;
  const Box board = bounds(subject.prepared.layout().outline);
  judge.hold(
      rule("board-weight"), weights.board,
      {between(board.low, board.high, 0.5), subject.prepared.surface().thickness, {Kind::board}, "the board"},
      "the board will weigh about " + shown_weight(subject.prepared.board(), weights.board) +
          ", the blank weighs about " + shown_weight(subject.prepared.board(), weights.blank) +
          (known ? ""
                 : "; the density of \"" + subject.prepared.board().blank.material + "\" is not known and was guessed"),
      "a blank much lighter or heavier than this was measured wrong, or is not " +
          subject.prepared.board().blank.material);
}

}  // namespace

void judge_blank(const Subject& subject, Judge& judge) {
  const Box board = bounds(subject.prepared.layout().outline), &blank = subject.prepared.layout().blank;
  const double middle_x = (board.low.x + board.high.x) / 2;
  const double nut = board.low.x - blank.low.x, heel = blank.high.x - board.high.x;
  const double low = board.low.y - blank.low.y, high = blank.high.y - board.high.y;
  const double ends = std::min(nut, heel), sides = std::min(low, high);
  const double top = subject.prepared.layout().blank_thickness;
  const double above = top - subject.prepared.board().board.thickness - subject.prepared.board().sanding;
  const auto lacks = [&](const Rule& rule, double spare) { return judge.shown(judge.limit(rule) - spare); };
  judge.hold(rule("blank-short"), ends, {{nut < heel ? blank.low.x : blank.high.x, 0}, top, {Kind::blank}, "the blank"},
             "the blank has only " + judge.shown(ends) + " to spare at the " + (nut < heel ? "nut" : "body") +
                 " end: there is little room for clamps, tabs and the outline cutter",
             "take a blank " + lacks(rule("blank-short"), ends) + " longer there, or move the board with blank.at");
  judge.hold(rule("blank-narrow"), sides,
             {{middle_x, low < high ? blank.low.y : blank.high.y}, top, {Kind::blank}, "the blank"},
             "the blank has only " + judge.shown(sides) + " to spare at the " + (low < high ? "lower" : "upper") +
                 " side: there is little room for clamps, tabs and the outline cutter",
             "take a blank " + lacks(rule("blank-narrow"), sides) + " wider there, or move the board with blank.at");
  judge.hold(rule("blank-thin"), above, {{middle_x, 0}, top, {Kind::blank}, "the blank"},
             "the blank is only " + judge.shown(above) +
                 " thicker than the board with its sanding: where it is bowed the radius will not clean up",
             "take a blank " + lacks(rule("blank-thin"), above) + " thicker");
  judge_room(subject, std::min(ends, sides), judge);
  judge_clamps(subject, judge);
  judge_yield(subject, judge);
  judge_weight(subject, judge);
}

}  // namespace sagitta
