#include <algorithm>
#include <cstdio>
#include <optional>

#include "board/CutSide.hpp"
#include "board/SlotCut.hpp"
#include "rules/Work.hpp"
#include "wood/WoodFamilies.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

/// Something that a cutter must do on this board, and how deep it goes from the top of the wood at that time.
struct Task {
  FeatureId where;
  std::string name;
  std::vector<CutterUse> uses;  ///< any of these will do
  double depth = 0;
};

FeatureId of(Operation operation) { return {Kind::operation, static_cast<int>(operation)}; }

double deepest_pocket(const PreparedBoard& ready) {
  double depth = 0;
  for (const Inlay& inlay : ready.board().inlays) depth = std::max(depth, inlay.depth);
  for (const InlayPiece& piece : ready.inlays().pieces) depth = std::max(depth, piece.depth);
  return depth;
}

/// What is cut needs no cutter any more.
bool is_cut(const Board& board, Operation operation) {
  const std::vector<Operation>& done = board.measured.done;
  return std::find(done.begin(), done.end(), operation) != done.end() ||
         (operation == Operation::slots && board.measured.slot_width.has_value());
}

double lowest_edge(const Subject& subject) {
  double height = subject.prepared.surface().thickness;
  for (const LineSegment& edge : subject.prepared.layout().edges)
    for (const Point p : {edge.a, edge.b}) height = std::min(height, subject.prepared.surface().height(p));
  return height;
}

/// The builder's own cuts that one operation makes, as deep as the deepest of them. `top`: of the wood at that time.
void add_cuts(const Board& board, Operation operation, double top, std::vector<Task>& tasks) {
  double deepest = 0;
  int at = -1;
  for (std::size_t i = 0; i < board.cuts.size(); ++i) {
    const Cut& cut = board.cuts[i];
    if (operation_of(cut) != operation) continue;
    const double depth = is_through(cut)      ? top
                         : is_from_below(cut) ? cut.depth
                                              : top - board.board.thickness + cut.depth;
    if (depth > deepest) deepest = depth, at = static_cast<int>(i);
  }
  if (at >= 0)
    tasks.push_back({{Kind::cut, at},
                     operation == Operation::pockets ? "the builder's own cuts" : "the builder's own cuts from below",
                     {CutterUse::pocket_clear},
                     deepest});
}

std::vector<Task> tasks_of(const Subject& subject) {
  const Board& board = subject.prepared.board();
  const double finished = subject.prepared.surface().thickness;
  std::vector<Task> tasks;
  for (const Operation operation : board.order) {
    if (is_cut(board, operation)) continue;
    const double top = top_before(subject, operation);
    if (operation == Operation::pockets && !board.inlays.empty())
      tasks.push_back({of(Operation::pockets),
                       "the pockets",
                       {CutterUse::pocket_clear, CutterUse::pocket_detail},
                       top - finished + deepest_pocket(subject.prepared)});
    if (operation == Operation::inlay && !board.inlays.empty())
      tasks.push_back({of(Operation::inlay), "the pieces", {CutterUse::piece}, 0});
    if (operation == Operation::radius)
      tasks.push_back(
          {of(Operation::radius), "the radius", {CutterUse::radius}, top - board.sanding - lowest_edge(subject)});
    if (operation == Operation::slots) {
      if (!subject.prepared.layout().slots.empty())
        tasks.push_back({of(Operation::slots), "the slots", {CutterUse::slot}, top - finished + slot_depth(board)});
      if (subject.prepared.layout().nut)
        tasks.push_back({{Kind::nut_seat}, "the nut's seat", {CutterUse::nut}, top - finished + board.nut.depth});
    }
    add_cuts(board, operation, top, tasks);
    if (operation == Operation::outline)
      tasks.push_back({of(Operation::outline), "the outline", {CutterUse::outline}, top});
  }
  return tasks;
}

void judge_task(const Subject& subject, const Task& task, Judge& judge) {
  const Spot spot{{}, subject.prepared.surface().thickness, task.where, task.name};
  int named = 0;
  for (const Cutter& cutter : subject.prepared.board().cutters) {
    const bool meant =
        std::any_of(task.uses.begin(), task.uses.end(), [&](CutterUse use) { return has_use(cutter, use); });
    if (!meant) continue;
    ++named;
    if (task.depth <= 0) continue;
    judge.hold(rule("cutter-too-short"), cutter.cutting_length - task.depth, spot,
               "cutter \"" + cutter.name + "\" cuts " + judge.shown(cutter.cutting_length) + " deep and " + task.name +
                   " need " + judge.shown(task.depth) + ": its shank rubs, and it breaks",
               "take a cutter with at least " + judge.shown(task.depth + judge.limit(rule("cutter-too-short"))) +
                   " of cutting length");
  }
  judge.hold(rule("no-cutter"), named, spot, "no cutter is named for " + task.name,
             "name one, or give one of those named this use too");
}

void judge_slot_cutter(const Subject& subject, const Cutter& cutter, Judge& judge) {
  const double cut = cut_width(cutter);
  const double width = subject.prepared.board().slots.width;
  const std::string held = slot_cut(subject.prepared.board()) == SlotCut::lines ? "the strips" : "the frets";
  judge.hold(rule("slot-cutter-too-wide"), cut - width,
             {{}, subject.prepared.surface().thickness, {Kind::slots}, "all slots"},
             "cutter \"" + cutter.name + "\" cuts " + judge.shown(cut) + " wide and the slots are " +
                 judge.shown(width) + ": they will be too wide, and " + held + " loose",
             "take a cutter that cuts at most " + judge.shown(width));
  judge.hold(rule("slot-cutter-narrow"), width - cut,
             {{}, subject.prepared.surface().thickness, {Kind::slots}, "all slots"},
             "cutter \"" + cutter.name + "\" cuts " + judge.shown(cut) + " wide and the slots are " +
                 judge.shown(width) + ": in one pass they come out " + judge.shown(width - cut) + " too narrow",
             "cut each slot in two passes, one along each side, or take a wider cutter");
}

std::string plain(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f", value);
  return text;
}

void judge_strength(const Subject& subject, const Cutter& cutter, Judge& judge) {
  const int index = static_cast<int>(&cutter - subject.prepared.board().cutters.data());
  const Spot spot{{}, subject.prepared.surface().thickness, {Kind::cutter, index}, "cutter \"" + cutter.name + "\""};
  const double slender = cutter.cutting_length / cutter.diameter;
  const Rule& long_one = rule("cutter-slender");
  judge.hold(long_one, slender, spot,
             spot.feature + " is " + plain(slender) + " times as long as it is thick: it bends with the cube of that",
             "take one with at most " + judge.shown(judge.limit(long_one) * cutter.diameter) + " of cutting length");
  if (cutter.pass_depth) {
    const double part = *cutter.pass_depth / cutter.diameter;
    judge.hold(rule("pass-too-deep"), part, spot,
               spot.feature + " takes passes of " + judge.shown(*cutter.pass_depth) + ", " + plain(part) +
                   " times its diameter",
               "make pass_depth at most " + judge.shown(judge.limit(rule("pass-too-deep")) * cutter.diameter));
  }
  // A thin cutter bears less: the limit holds from 1.8 mm on and falls with the diameter below, to 0.01 at 0.6.
  constexpr double full_strength = 1.8;  // mm; common practice, no source
  const Rule& large = rule("runout-large");
  const double share = std::min(1.0, cutter.diameter / full_strength);
  judge.hold(large, cutter.runout / share, spot,
             spot.feature + " runs out by " + judge.shown(cutter.runout) + " where " +
                 judge.shown(judge.limit(large) * share) + " is the most: one edge does all the cutting",
             "clean the collet and measure again before the cutter goes in");
}

}  // namespace

void judge_cutters(const Subject& subject, Judge& judge) {
  if (subject.prepared.board().cutters.empty()) return;
  for (const Task& task : tasks_of(subject)) judge_task(subject, task, judge);
  for (const Cutter& cutter : subject.prepared.board().cutters)
    if (has_use(cutter, CutterUse::slot) && !subject.prepared.layout().slots.empty() &&
        !is_cut(subject.prepared.board(), Operation::slots))
      judge_slot_cutter(subject, cutter, judge);
  for (const Cutter& cutter : subject.prepared.board().cutters) judge_strength(subject, cutter, judge);
}

}  // namespace sagitta
