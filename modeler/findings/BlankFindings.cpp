#include <algorithm>

#include "findings/Families.hpp"

namespace sagitta {

void judge_blank(const Subject& subject, Judge& judge) {
  const Box board = bounds(subject.layout.outline), &blank = subject.layout.blank;
  const double middle_x = (board.low.x + board.high.x) / 2;
  const double nut = board.low.x - blank.low.x, heel = blank.high.x - board.high.x;
  const double low = board.low.y - blank.low.y, high = blank.high.y - board.high.y;
  const double ends = std::min(nut, heel), sides = std::min(low, high);
  const double top = subject.layout.blank_thickness;
  const double above = top - subject.board.board.thickness - subject.board.sanding;
  const auto lacks = [&](const Rule& rule, double spare) { return judge.shown(judge.limit(rule) - spare); };
  judge.hold(rule("blank-short"), ends, {{nut < heel ? blank.low.x : blank.high.x, 0}, top, "the blank"},
             "the blank has only " + judge.shown(ends) + " to spare at the " + (nut < heel ? "nut" : "heel") +
                 " end: there is little room for clamps, tabs and the outline cutter",
             "take a blank " + lacks(rule("blank-short"), ends) + " longer there, or move the board with blank.at");
  judge.hold(rule("blank-narrow"), sides, {{middle_x, low < high ? blank.low.y : blank.high.y}, top, "the blank"},
             "the blank has only " + judge.shown(sides) + " to spare at the " + (low < high ? "lower" : "upper") +
                 " side: there is little room for clamps, tabs and the outline cutter",
             "take a blank " + lacks(rule("blank-narrow"), sides) + " wider there, or move the board with blank.at");
  judge.hold(rule("blank-thin"), above, {{middle_x, 0}, top, "the blank"},
             "the blank is only " + judge.shown(above) +
                 " thicker than the board with its sanding: where it is bowed the radius will not clean up",
             "take a blank " + lacks(rule("blank-thin"), above) + " thicker");
}

}  // namespace sagitta
