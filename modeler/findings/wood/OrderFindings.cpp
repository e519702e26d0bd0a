#include <algorithm>
#include <cmath>

#include "board/CutSide.hpp"
#include "rules/Work.hpp"
#include "wood/WoodFamilies.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

std::string list_of(const std::vector<Operation>& operations) {
  std::string text;
  for (const Operation operation : operations)
    text += (text.empty() ? "" : ", ") + std::string(operation_name(operation));
  return text;
}

/// What comes after the outline although it needs the blank's straight sides.
void judge_outline_last(const Subject& subject, Judge& judge) {
  const auto& order = subject.prepared.board().order;
  const auto outline = std::find(order.begin(), order.end(), Operation::outline);
  if (outline == order.end()) return;
  const std::vector<Operation> after(outline + 1, order.end());
  judge.hold(rule("outline-before-last"), static_cast<double>(after.size()),
             {{}, subject.prepared.surface().thickness, {Kind::work_order}, "the order of work"},
             "the outline is cut before " + list_of(after) +
                 ": the blank's straight sides, which hold the board square"
                 " in the clamps, are gone by then",
             "put \"outline\" last in work.order");
}

/// Whether the operation pockets has anything to do.
bool has_pockets(const Board& board) {
  return !board.inlays.empty() || std::any_of(board.cuts.begin(), board.cuts.end(),
                                              [](const Cut& cut) { return operation_of(cut) == Operation::pockets; });
}

FeatureId id_of(const Board& board, const Setup& setup) {
  return {Kind::setup, static_cast<int>(&setup - board.setups.data())};
}

bool uses(const Setup& setup, Operation operation) {
  return std::find(setup.operations.begin(), setup.operations.end(), operation) != setup.operations.end();
}

/// Operations of the set-up that begin after `cut` has taken its zero away.
std::vector<Operation> begun_after(const Board& board, const Setup& setup, Operation cut) {
  if (uses(setup, cut)) return {};
  std::vector<Operation> late;
  for (const Operation operation : setup.operations)
    if (comes_before(board, cut, operation)) late.push_back(operation);
  return late;
}

void judge_zero(const Subject& subject, const Setup& setup, const std::string& name, Judge& judge) {
  const Board& board = subject.prepared.board();
  const double blank = subject.prepared.layout().blank_thickness;
  const Spot spot{{}, blank, id_of(board, setup), name};
  const auto gone = [&](const std::vector<Operation>& late, const std::string& what, const std::string& instead) {
    judge.hold(rule("zero-gone"), static_cast<double>(late.size()), spot,
               name + " takes its zero from " + what + " for " + list_of(late) + ", and by then it has been cut away",
               instead);
  };
  if (setup.zero == Zero::corner)
    gone(begun_after(board, setup, Operation::outline), "the blank's corner", "take zero = \"nut\" there");
  if (setup.z_zero == ZZero::blank_top)
    gone(begun_after(board, setup, has_thickness(board) ? Operation::thickness : Operation::radius), "the blank's top",
         "take z_zero = \"glue-face\" there");
  const Box& stock = subject.prepared.layout().blank;
  const Point zero = setup.zero == Zero::corner   ? stock.low
                     : setup.zero == Zero::centre ? between(stock.low, stock.high, 0.5)
                                                  : Point{};
  judge.hold(rule("zero-on-blank"), length(zero), {zero, blank, id_of(board, setup), name},
             name + " takes x and y from the blank's " + (setup.zero == Zero::corner ? "corner" : "middle") +
                 ": an error of the blank's measured length or width moves the board by " +
                 (setup.zero == Zero::corner ? "as much" : "half of it"),
             "measure the blank where it is clamped and put that into blank.length and blank.width");
  const double shift = setup.z_zero == ZZero::blank_top ? blank : setup.z_zero == ZZero::bed ? -setup.tape : 0;
  judge.hold(rule("zero-shifted"), std::abs(shift), spot,
             "in " + name + " the machine's z = 0 lies " + judge.shown(std::abs(shift)) +
                 (shift > 0 ? " above the glue face: an error of the blank's measured thickness goes into every depth"
                            : " below the glue face: the tape's thickness goes into every depth"),
             shift > 0 ? "measure the blank where it is cut and put that into blank.thickness"
                       : "measure the tape pressed down, and put that into the set-up's tape");
}

void judge_setup(const Subject& subject, const Setup& setup, const std::string& name, Judge& judge) {
  judge_zero(subject, setup, name, judge);
  if (uses(setup, Operation::outline))
    judge.hold(rule("outline-into-bed"), setup.tape, {{}, 0, id_of(subject.prepared.board(), setup), name},
               "the outline is cut right through and nothing lies under the blank: the cutter goes into the bed",
               "lay tape or a sacrificial board under it, and give its thickness as the set-up's tape");
}

}  // namespace

void judge_order(const Subject& subject, Judge& judge) {
  const Board& board = subject.prepared.board();
  judge_outline_last(subject, judge);
  if (board.setups.empty()) return;
  std::vector<Operation> idle;
  for (const Operation operation : board.order)
    if (operation != Operation::inlay && !setup_of(board, operation) &&
        (operation != Operation::pockets || has_pockets(board)))
      idle.push_back(operation);
  judge.hold(rule("operation-without-setup"), static_cast<double>(idle.size()), {{}, 0, {Kind::setups}, "the set-ups"},
             "no set-up does " + list_of(idle), "name them under the operations of a set-up");
  for (std::size_t i = 0; i < board.setups.size(); ++i) {
    const Setup& setup = board.setups[i];
    const std::string name = setup.name.empty() ? "set-up " + std::to_string(i + 1) : "set-up \"" + setup.name + "\"";
    judge_setup(subject, setup, name, judge);
  }
}

}  // namespace sagitta
