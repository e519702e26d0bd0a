// Measured values against printed tables and hand arithmetic.

#include <cmath>

#include "GoodBoard.hpp"

namespace sagitta::test {
namespace {

// A piece 44 mm across the board, so that y = 22: depth - drop(22), drop by Machinery's Handbook, 31st ed., p. 79.
// At 12 in the drop is .79500: 1.27 less that is .475, not to be rounded to either side.
TEST(Inlay, IsSandedThroughWhereTheDropIsMoreThanItsDepth) {
  const double radius[] = {7.25, 9.5, 12}, left_127[] = {-.05, .27, .475}, left_1524[] = {.21, .52, .73};
  for (int i = 0; i < 3; ++i) {
    Board board = good_board();
    board.surface.radius_at_nut = radius[i] * inch;
    board.inlays[0].shape = InlayShape::block;
    board.inlays[0].along = 8;
    board.inlays[0].across = 44;
    board.inlays[0].depth = 1.27;
    EXPECT_NEAR(measured(board, "inlay-sanded-through"), left_127[i], printed2);
    EXPECT_EQ(found(board, "inlay-sanded-through").has_value(), i == 0);
    EXPECT_EQ(found(board, "inlay-too-thin").has_value(), i == 1);
    board.inlays[0].depth = 1.524;
    EXPECT_NEAR(measured(board, "inlay-sanded-through"), left_1524[i], printed2);
  }
}

// 1.95 deep in the middle, 55.56 wide, a level floor: the depth at the edge.
TEST(Slot, WithALevelFloorIsTooShallowAtTheEdges) {
  const double radius[] = {7.25, 9.5, 12, 16}, depth[] = {-.16, .35, .68, 1.0}, digit[] = {.005, .005, .005, .05};
  for (int i = 0; i < 4; ++i) {
    Board board = good_board();
    board.surface.radius_at_nut = radius[i] * inch;
    board.slots.floor = SlotFloor::level;
    EXPECT_NEAR(measured(board, "slot-too-shallow") + board.wire.tang_depth, depth[i], digit[i]);
    EXPECT_TRUE(found(board, "slot-too-shallow"));
    board.slots.floor = SlotFloor::arc;
    EXPECT_NEAR(measured(board, "slot-too-shallow"), 1.95 - 1.6, 1e-9);
  }
}

// 6.35 board, 1.95 slot: 4.40 left in the middle, and at 7.25 in 2.29 at the edge.
TEST(Slot, LeavesWoodUnderIt) {
  Board board = good_board();
  board.surface.radius_at_nut = 7.25 * inch;
  EXPECT_NEAR(measured(board, "thin-under-slot"), 2.29, printed2);
  board.slots.floor = SlotFloor::level;
  EXPECT_NEAR(measured(board, "thin-under-slot"), 4.40, 1e-9);
}

// Edge thickness = thickness - drop, 6.35 thick and 57.15 wide.
TEST(Edge, IsAsHighAsPrinted) {
  const double radius[] = {9.5, 7.25}, height[] = {4.65, 4.12};
  for (int i = 0; i < 2; ++i) {
    Board board = good_board();
    board.board.nut_width = board.board.heel_width = 57.15;
    board.surface.radius_at_nut = radius[i] * inch;
    EXPECT_NEAR(measured(board, "thin-edge"), height[i], printed2);
  }
}

// A 1/4 in dot in the last space: half of what the space is wider than dot and slot.
TEST(Inlay, LeavesAWallToTheSlot) {
  Board board = good_board();
  board.inlays[0].frets = {22};
  board.inlays[0].diameter = 6.35;
  board.inlays[0].clearance = 0;
  EXPECT_NEAR(measured(board, "thin-wall-at-slot"), 1.94, printed2);
  EXPECT_FALSE(found(board, "thin-wall-at-slot"));
  board.scale.length = 13.875 * inch;
  board.scale.frets = 15;
  board.inlays[0].frets = {15};
  EXPECT_NEAR(measured(board, "thin-wall-at-slot"), .94, printed2);
  EXPECT_TRUE(found(board, "thin-wall-at-slot"));
}

TEST(Inlay, LosesWallWhereTheWorkIsClampedAnew) {
  Board board = good_board();
  const double wall = measured(board, "thin-wall-at-slot");
  sagitta::Setup first, second;
  first.operations = {Operation::pockets};
  second.operations = {Operation::slots};
  second.reclamp_error = 0.3;
  board.setups = {first, second};
  EXPECT_NEAR(measured(board, "thin-wall-at-slot"), wall - 0.3, 1e-9);
}

struct StringRun {
  double scale, nut, bridge;
  int frets;
  double hump[4];  ///< radius 7.25, 9.5, 12, 16 in
  double linear;   ///< 10 in at the nut to 16 in at the last fret
};

// The printed table of humps under the outer string from nut to last fret, mm.
TEST(Hump, IsAsPrinted) {
  const StringRun runs[] = {{25.5, 35, 52.4, 22, {.0271, .0205, .0162, .0121}, .0043},
                            {24.75, 36, 50, 22, {.0175, .0133, .0105, .0078}, .0080},
                            {34, 31.75, 57.15, 20, {.0523, .0396, .0312, .0234}, .0002}};
  const double radius[] = {7.25, 9.5, 12, 16};
  for (const StringRun& run : runs) {
    Board board = good_board();
    board.inlays.clear();
    board.scale.length = run.scale * inch;
    board.scale.frets = run.frets;
    board.strings.nut_spread = run.nut;
    board.strings.saddle_spread = run.bridge;
    for (int i = 0; i < 4; ++i) {
      board.surface.radius_at_nut = radius[i] * inch;
      EXPECT_NEAR(measured(board, "hump-under-string"), run.hump[i], printed4) << run.scale << " " << radius[i];
    }
    board.surface.profile = Profile::compound;
    board.surface.heel_at = HeelAt::last_fret;
    board.surface.radius_at_nut = 10 * inch;
    board.surface.radius_at_heel = 16 * inch;
    EXPECT_NEAR(measured(board, "hump-under-string"), run.linear, printed4) << run.scale;
    board.surface.profile = Profile::string_line;
    EXPECT_NEAR(measured(board, "hump-under-string"), 0, 1e-9) << run.scale;
  }
}

// Published heel radii of the string law: 10 in goes to 13.576 in at fret 22 of the first layout.
TEST(Hump, NamesTheRadiusThatRemovesIt) {
  Board board = good_board();
  board.surface.profile = Profile::compound;
  board.surface.heel_at = HeelAt::last_fret;
  board.surface.radius_at_heel = 10 * inch;
  board.strings.nut_spread = 35;
  board.strings.saddle_spread = 52.4;
  board.surface.radius_at_nut = 10 * inch;
  board.units = Units::inch;
  board.limits["hump-under-string"] = 0;
  EXPECT_NE(found(board, "hump-under-string")->suggestion.find("13.576"), std::string::npos);
}

// The rule of 18 puts fret 12 of 25.5 in at 12.6573 in, where half the scale is 12.75.
TEST(Octave, IsOffByTheRuleOfEighteen) {
  Board board = good_board();
  for (int n = 1; n <= 22; ++n) board.scale.cents.push_back(n * 1200 * std::log2(18.0 / 17));
  EXPECT_NEAR(measured(board, "octave-off") / inch, 12.75 - 12.6573, printed4);
  EXPECT_EQ(found(board, "octave-off")->severity, Severity::stop);
}

// Slots of 25.4 in on a scale of 25.5 in: published as -6.8 cents at fret 12 and -17.3 at fret 22.
TEST(MeasuredSlots, GiveTheErrorInCents) {
  for (const auto& [frets, cents] : {std::pair{12, "6.8 cents flat"}, std::pair{22, "17.3 cents flat"}}) {
    Board board = good_board();
    board.scale.frets = frets;
    for (int n = 1; n <= frets; ++n) board.measured.slots.push_back(25.4 * inch * (1 - std::exp2(-n / 12.0)));
    const auto finding = found(board, "slot-misplaced");
    ASSERT_TRUE(finding);
    EXPECT_NE(finding->message.find(cents), std::string::npos) << finding->message;
    EXPECT_NEAR(finding->value, 0.1 * inch * (1 - std::exp2(-frets / 12.0)), 1e-9);
  }
}

// Gaps between slots: printed for 25.5 in, frets 23-24: 9.63 mm; 34 in, frets 19 and 20 at 22.6539 and 23.2907 in.
TEST(Spacing, IsTheGapLessTheCrown) {
  Board board = good_board();
  board.inlays.clear();
  board.scale.frets = 24;
  EXPECT_NEAR(measured(board, "narrow-fret-space"), 9.63 - 2.4, printed2);
  board.scale.length = 34 * inch;
  board.scale.frets = 20;
  EXPECT_NEAR(measured(board, "narrow-fret-space"), (23.2907 - 22.6539) * inch - 2.4, 2 * printed4 * inch);
}

// The last fret of 25.5 in with 22 frets: 465.945.
TEST(Neck, IsReachedByLastFretAndHeel) {
  Board board = good_board();
  board.neck = Neck{};
  board.neck->limit = 460;
  EXPECT_NEAR(measured(board, "last-fret-past-limit"), 5.945, 0.0005);
  EXPECT_NEAR(measured(board, "heel-past-limit"), 15.945, 0.0005);
}

TEST(Findings, AreTheSameOnALeftHandedBoard) {
  Board board = good_board();
  board.surface.radius_at_nut = 7.25 * inch;
  board.inlays[0].diameter = 36;
  board.inlays[0].double_frets = {};
  const auto right = findings(board);
  board.hand = Hand::left;
  const auto left = findings(board);
  ASSERT_EQ(left.size(), right.size());
  EXPECT_GT(right.size(), 2U);
  for (std::size_t i = 0; i < right.size(); ++i) {
    EXPECT_EQ(left[i].name, right[i].name);
    EXPECT_NEAR(left[i].value, right[i].value, 1e-9);
  }
}

}  // namespace
}  // namespace sagitta::test
