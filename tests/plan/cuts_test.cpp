// The builder's own cuts in the plan: floors, ceilings, holes right through, and wood that they would free. Volumes by
// hand on a flat board.

#include <gtest/gtest.h>

#include "layout/SampleBoards.hpp"
#include "plan/DisconnectedComponent.hpp"
#include "plan/WoodVolume.hpp"

namespace sagitta {
namespace {

/// Flat, 6.5 thick, 56 wide, from x = -8 to 384, with slots at 200, 300, 350 and 375.
Board flat() {
  Board board = samples::octaves();
  board.surface = {};
  return board;
}

Cut block(const std::string& name, Point at, double along, double across, double depth, CutFrom from = CutFrom::top) {
  Cut cut;
  cut.name = name;
  cut.shape = CutShape::block;
  cut.at = {at.x, at.y};
  cut.along = along, cut.across = across, cut.depth = depth;
  cut.from = from;
  return cut;
}

constexpr double through = std::numeric_limits<double>::infinity();

std::variant<Plan, Faults> planned(const Board& board, Stage stage = Stage::board) {
  const Layout layout = samples::sound(board);
  return make_plan(board, layout, surface_of(board, layout), stage);
}

double volume(const Board& board, Stage stage = Stage::board) {
  const auto plan = planned(board, stage);
  if (const auto* faults = std::get_if<Faults>(&plan)) {
    ADD_FAILURE() << faults->front().message;
    return 0;
  }
  return wood_volume(std::get<Plan>(plan));
}

/// What the cuts take of the board at a stage, mm^3.
double taken(std::vector<Cut> cuts, Stage stage = Stage::board) {
  Board board = flat();
  const double whole = volume(board, stage);
  board.cuts = std::move(cuts);
  return whole - volume(board, stage);
}

TEST(CutPlan, FromTheTopFromBelowAndThrough) {
  EXPECT_NEAR(taken({block("a", {100, 0}, 20, 8, 2)}), 20 * 8 * 2, 1e-6);
  EXPECT_NEAR(taken({block("a", {100, 0}, 20, 8, 2, CutFrom::below)}), 20 * 8 * 2, 1e-6);
  EXPECT_NEAR(taken({block("a", {100, 0}, 20, 8, through)}), 20 * 8 * 6.5, 1e-6);
}

TEST(CutPlan, TheLowestFloorAndTheHighestCeilingWin) {
  // They have 10 x 8 in common.
  EXPECT_NEAR(taken({block("a", {100, 0}, 20, 8, 2), block("b", {110, 0}, 20, 8, 3)}), 10 * 8 * 2 + 20 * 8 * 3, 1e-6);
  EXPECT_NEAR(taken({block("a", {100, 0}, 20, 8, 2, CutFrom::below), block("b", {110, 0}, 20, 8, 3, CutFrom::below)}),
              10 * 8 * 2 + 20 * 8 * 3, 1e-6);
}

TEST(CutPlan, APinUnderACutFromBelow) {
  Board board = flat();
  board.pins = Pins{4, 3, {{100, 0}}};
  const double pinned = volume(board);
  board.cuts = {block("a", {100, 0}, 20, 8, 2, CutFrom::below)};
  EXPECT_NEAR(pinned - volume(board), (20 * 8 - std::numbers::pi * 4) * 2, 1e-6);
}

// Floor at 6.5 - 4 = 2.5, ceiling at 3: where both are, the hole goes right through.
TEST(CutPlan, AFloorUnderACeilingIsAHole) {
  const std::vector<Cut> cuts{block("a", {100, 0}, 20, 8, 4), block("b", {110, 0}, 20, 8, 3, CutFrom::below)};
  EXPECT_NEAR(taken(cuts), 10 * 8 * 4 + 10 * 8 * 6.5 + 10 * 8 * 3, 1e-6);
}

TEST(CutPlan, OutlineAndBlankClip) {
  // The edge lies at y = 28; the board ends at x = 384.
  EXPECT_NEAR(taken({block("a", {100, 28}, 20, 8, 2)}), 20 * 4 * 2, 1e-6);
  EXPECT_NEAR(taken({block("a", {384, 0}, 10, 600, through)}), 5 * 56 * 6.5, 1e-6);
}

TEST(CutPlan, StagesTakeWhatIsCutByThen) {
  const std::vector<Cut> cuts{block("a", {100, 0}, 20, 8, 2), block("b", {100, 20}, 20, 8, 3, CutFrom::below)};
  EXPECT_NEAR(taken(cuts, Stage::blank), 0, 1e-9);
  EXPECT_NEAR(taken(cuts, Stage::pocketed), 20 * 8 * (2 + 0.8), 1e-6);  // the blank is 0.8 thicker
  EXPECT_NEAR(taken(cuts, Stage::slotted), 20 * 8 * 2, 1e-6);
  EXPECT_NEAR(taken(cuts, Stage::board), 20 * 8 * (2 + 3), 1e-6);
}

TEST(CutPlan, ACutThroughASlotGoesBelowIt) {
  // Slot 1 at x = 200, 0.5 wide and 2 deep, is in the block over all of its width.
  EXPECT_NEAR(taken({block("a", {200, 0}, 20, 8, 3)}), 20 * 8 * 3 - 0.5 * 8 * 2, 1e-6);
}

// Four cuts right through round a column of 4 x 4 that is held by nothing.
TEST(CutPlan, WoodThatIsFreedIsRefused) {
  Board board = flat();
  board.cuts = {block("left", {97, 0}, 2, 8, through), block("right", {103, 0}, 2, 8, through),
                block("near", {100, -3}, 8, 2, through)};
  EXPECT_TRUE(std::holds_alternative<Plan>(planned(board)));
  board.cuts.push_back(block("far", {100, 3}, 8, 2, through));
  const auto freed = planned(board);
  const Faults* faults = std::get_if<Faults>(&freed);
  ASSERT_TRUE(faults);
  EXPECT_EQ(faults->front().code, FaultCode::wood_loose);
  EXPECT_EQ(faults->front().where.kind, FeatureId::Kind::cut);
}

TEST(CutPlan, FacesBelongToTheirCut) {
  Board board = flat();
  board.cuts = {block("a", {100, 0}, 20, 8, 2), block("b", {100, 20}, 20, 8, 3, CutFrom::below)};
  const auto made = planned(board);
  const Plan& plan = std::get<Plan>(made);
  int floors = 0, ceilings = 0;
  for (const Cell& cell : plan.cells) {
    if (cell.feature > 0 && plan.features[cell.feature].id == FeatureId{FeatureId::Kind::cut, 0}) ++floors;
    if (cell.bottom_feature > 0 && plan.features[cell.bottom_feature].id == FeatureId{FeatureId::Kind::cut, 1})
      ++ceilings;
  }
  EXPECT_EQ(floors, 1);
  EXPECT_EQ(ceilings, 1);
}

// The blank is milled to 6.5 + 0.3 where nothing else is said; what is cut later starts from there.
TEST(Thicknessed, EveryLaterStageIsAsThick) {
  Board board = flat();
  const double blank = volume(board, Stage::blank);
  board.order.insert(board.order.begin(), Operation::thickness);
  EXPECT_EQ(stages_of(board)[1], Stage::thicknessed);
  EXPECT_NEAR(volume(board, Stage::thicknessed) / blank, 6.8 / 7.3, 1e-12);
  EXPECT_NEAR(volume(board, Stage::pocketed) / blank, 6.8 / 7.3, 1e-12);
  board.thickness_to = 7;
  EXPECT_NEAR(volume(board, Stage::pocketed) / blank, 7 / 7.3, 1e-12);
  EXPECT_NEAR(volume(board, Stage::board), volume(flat(), Stage::board), 1e-9);
}

TEST(BindingLines, WidenTheLedge) {
  Board board = flat();
  const double whole = volume(board);
  board.binding = Binding{1.5, 3, {0.5, 0.25}, {"maple", "ebony"}};
  // Ledges 2.25 wide and 3 high along 392 mm; the slots, 2 deep, end in them.
  EXPECT_NEAR(whole - volume(board), 2 * 2.25 * (392 * 3 - 4 * 0.5 * 2), 1e-6);
}

TEST(DotsInBinding, LeaveTheWoodWhole) {
  Board board = flat();
  board.binding = Binding{1.5, 0, {}, {}};
  const double whole = volume(board);
  board.side_dots.emplace();
  board.side_dots->frets = {1, 2};
  board.side_dots->depth = 1.5;
  board.side_dots->in = DotIn::binding;
  EXPECT_NEAR(whole - volume(board), 0, 1e-9);
  board.side_dots->in = DotIn::wood;
  board.side_dots->depth = 3.5;  // 2 mm of each behind the binding
  EXPECT_NEAR(whole - volume(board), 2 * 2 * std::numbers::pi, 1e-6);
  board.side_dots->edge = DotEdge::both;
  EXPECT_NEAR(whole - volume(board), 4 * 2 * std::numbers::pi, 1e-6);
}

}  // namespace
}  // namespace sagitta
