#include <algorithm>

#include "findings/Families.hpp"

namespace sagitta {
namespace {

void judge_width(const Subject& subject, double x, double neck_width, const std::string& where, Judge& judge) {
  const Neck& neck = *subject.board.neck;
  // A rough neck is trimmed to the board: only what trimming leaves counts.
  const double trimmed = neck_width - (neck.state == NeckState::rough ? 2 * neck.trim : 0);
  const double board_width = 2 * subject.layout.half_width(x);
  const double wider = board_width - trimmed;
  const Rule& narrow = rule("board-narrower-than-neck");
  const double lack = judge.limit(narrow) - wider;
  judge.hold(narrow, wider, {{x, board_width / 2}, 0, "the " + where},
             "at the " + where + " the board is " + judge.shown(board_width) + " wide and the neck " +
                 judge.shown(trimmed) + ": the neck stands out and its finished side must be cut again",
             "make the board " + judge.shown(lack) + " wider there", widened(subject, x, lack, judge));
}

void judge_reach(const Subject& subject, double limit, Judge& judge) {
  const Slot& last = subject.layout.slots.back();
  const Point fret = last.bass_end.x > last.treble_end.x ? last.bass_end : last.treble_end;
  const Point heel{bounds(subject.layout.outline).high.x, 0};
  const std::string most = " the neck allows " + judge.shown(limit);
  judge.hold(rule("last-fret-past-limit"), fret.x - limit, {fret, subject.surface.height(fret), "the last fret"},
             "the last fret reaches to " + judge.shown(fret.x) + " and" + most,
             "use fewer frets, or a scale that is shorter");
  judge.hold(rule("heel-past-limit"), heel.x - limit, {heel, 0, "the heel end"},
             "the board reaches to " + judge.shown(heel.x) + " and" + most + ": it runs into what stands there",
             "make board.past_last_fret " + judge.shown(heel.x - limit) + " less",
             Fix{"board.past_last_fret", judge.down(subject.board.board.past_last_fret - heel.x + limit)});
}

}  // namespace

void judge_neck(const Subject& subject, Judge& judge) {
  if (!subject.board.neck) return;
  const Neck& neck = *subject.board.neck;
  if (neck.nut_width) judge_width(subject, 0, *neck.nut_width, "nut", judge);
  if (neck.body_width && neck.body_at)
    judge_width(subject, std::min(*neck.body_at, subject.layout.heel_end), *neck.body_width, "body end", judge);
  if (neck.limit && !subject.layout.slots.empty()) judge_reach(subject, *neck.limit, judge);
}

}  // namespace sagitta
