// Wood behind the last slot, and side dots beside a binding: values by hand.

#include "findings/MorePairs.hpp"

namespace sagitta::test {
namespace {

constexpr double half_slot = 0.29, half_width = 27.78;
const double edge = 6.35 - (304.8 - std::sqrt(304.8 * 304.8 - half_width * half_width));  // its height, 5.0814

double behind(const Board& board) { return measured(board, "wood-behind-last-slot"); }

TEST(BehindLastSlot, IsWhatTheSlotLeavesOfASquareEnd) {
  Board board = good_board();
  board.board.past_last_fret = 0.298;
  EXPECT_NEAR(behind(board), 0.008, 1e-9);
  EXPECT_EQ(found(board, "wood-behind-last-slot")->severity, Severity::stop);
  board.board.past_last_fret = 10;
  EXPECT_NEAR(behind(board), 10 - half_slot, 1e-9);
  EXPECT_FALSE(found(board, "wood-behind-last-slot"));
}

// A bulging arc of 100 mm stands back by 100 - sqrt(100^2 - 27.78^2) = 3.9359 at the edges: there the wood is least.
TEST(BehindLastSlot, IsLeastAtTheEdgesOfABulgingEnd) {
  Board board = good_board();
  board.board.heel = Heel::arc;
  board.board.heel_arc_radius = 100;
  board.board.past_last_fret = 4.5;
  EXPECT_NEAR(behind(board), 4.5 - (100 - std::sqrt(100 * 100 - half_width * half_width)) - half_slot, 1e-9);
  EXPECT_NEAR(std::abs(found(board, "wood-behind-last-slot")->at[1]), half_width, 1e-9);
}

TEST(BehindLastSlot, IsLeastOnTheCentreLineOfAHollowEnd) {
  Board board = good_board();
  board.board.heel = Heel::hollow;
  board.board.heel_arc_radius = 100;
  board.board.past_last_fret = 0.5;
  EXPECT_NEAR(behind(board), 0.5 - half_slot, 1e-9);
  EXPECT_NEAR(found(board, "wood-behind-last-slot")->at[1], 0, 1e-9);
}

// The corner's arc begins on the edge, 5 mm before the end.
TEST(BehindLastSlot, CountsTheRoundCorners) {
  Board board = good_board();
  board.board.corner_radius = 5;
  board.board.past_last_fret = 5.5;
  EXPECT_NEAR(behind(board), 0.5 - half_slot, 1e-9);
  EXPECT_TRUE(found(board, "wood-behind-last-slot"));
  board.slots.ends = SlotEnds::blind;  // 1.5 mm inside the edge the arc has come 5 sqrt(1 - 0.7^2) = 3.5707 further
  EXPECT_FALSE(found(board, "wood-behind-last-slot"));
}

// Slots that lean by an angle a: an end parallel to the last one leaves 0.7 cos a - 0.29 square to it, all along.
TEST(BehindLastSlot, IsMeasuredSquareToALeaningEnd) {
  Board board = good_board();
  board.inlays.clear();
  board.scale.length.reset();
  board.scale.bass = 660;
  board.scale.treble = 635;
  board.board.heel = Heel::fret;
  board.board.past_last_fret = 0.7;
  const FretLine last = std::get<Layout>(lay_out(board)).frets.back();
  const double lean = std::atan2(std::abs(last.treble.x - last.bass.x), std::abs(last.treble.y - last.bass.y));
  EXPECT_GT(lean, 0.05);
  EXPECT_NEAR(behind(board), 0.7 * std::cos(lean) - half_slot, 1e-9);
}

TEST(BehindLastSlot, IsTheSameOnALeftHandedBoard) {
  Board board = good_board();
  board.inlays.clear();
  board.scale.length.reset();
  board.scale.bass = 660;
  board.scale.treble = 635;
  board.board.past_last_fret = 12;
  const double right = behind(board);
  board.hand = Hand::left;
  EXPECT_NEAR(behind(board), right, 1e-9);
}

Board bound(double width, double height) {
  Board board = good_board();
  board.binding = Binding{width, height, {}, {}};
  drill_side_dot(board, 2, 3);
  return board;
}

// The hole's top stands at edge/2 + 1, the ledge's floor at the edge at edge - height.
TEST(SideDotInLedge, IsMeasuredFromTheHolesTop) {
  EXPECT_NEAR(measured(bound(1.5, 1.2), "side-dot-in-ledge"), edge / 2 - 1.2 - 1, 1e-9);
  EXPECT_NEAR(found(bound(1.5, 2), "side-dot-in-ledge")->value, edge / 2 - 2 - 1, 1e-9);
  EXPECT_EQ(found(bound(1.5, 2), "side-dot-in-ledge")->severity, Severity::look);
}

// Over two tables' worth of holes the ledge opens each: one finding a hole.
TEST(SideDotInLedge, IsToldOfEachHole) {
  Board board = bound(1.5, 2);
  board.side_dots->frets = {3, 5, 7};
  int told = 0;
  for (const Finding& finding : findings(board)) told += finding.name == "side-dot-in-ledge";
  EXPECT_EQ(told, 3);
}

TEST(SideDotInLedge, IsNotToldWithoutALedge) { EXPECT_FALSE(found(bound(1.5, 0), "side-dot-in-ledge")); }

TEST(SideDotsInBinding, IsTheDepthThatIsLeftInTheWood) {
  EXPECT_NEAR(measured(bound(1.8, 0), "side-dots-in-binding"), 1.2, 1e-9);
  EXPECT_NEAR(found(bound(3.5, 0), "side-dots-in-binding")->value, -0.5, 1e-9);
  EXPECT_EQ(found(bound(3, 0), "side-dots-in-binding")->severity, Severity::stop);
  EXPECT_FALSE(found(bound(3.5, 1.2), "side-dots-in-binding"));  // the holes lie under the ledge, in the wood
}

TEST(SideDotsInBinding, IsToldOnceForAllHoles) {
  Board board = bound(3.5, 0);
  board.side_dots->frets = {3, 5, 7};
  int told = 0;
  for (const Finding& finding : findings(board)) told += finding.name == "side-dots-in-binding";
  EXPECT_EQ(told, 1);
}

/// A square of 4 mm whose middle stands `across` from the centre line, as a drawing and as a block, with sharp corners.
Board square_at(double across, bool drawn) {
  Board board = good_board();
  if (drawn) let_in_square(board, 0);
  if (!drawn) make_block(board, 4, 4, 3);
  board.inlays[0].shift_across = across;
  board.inlays[0].clearance = 0.05;
  board.inlays[0].depth = 3;
  return board;
}

// Half width 27.78, half a square 2, clearance 0.05: the rule is one for drawings and for simple shapes. The refitted
// drawing may depart by its tolerance.
TEST(WallAtEdge, IsOneRuleForDrawingsAndShapes) {
  constexpr double refit = 0.006;
  for (const bool drawn : {false, true})
    for (const double across : {23.0, -23.0}) {
      Board board = square_at(across, drawn);
      const double wall = half_width - 23 - 2 - 0.05;
      EXPECT_NEAR(measured(board, "thin-wall-at-edge"), wall, refit) << drawn << across;
      board.setups.resize(2);
      board.setups[0].operations = {Operation::pockets};
      board.setups[1].operations = {Operation::outline};
      for (auto& setup : board.setups) setup.reclamp_error = 0.3;
      EXPECT_NEAR(measured(board, "thin-wall-at-edge"), wall - 0.3, refit) << drawn << across;
      for (const double height : {0.0, 2.0}) {
        board.binding = Binding{1.5, height, {}, {}};
        EXPECT_NEAR(measured(board, "thin-wall-at-edge"), wall - 0.3 - 1.5, refit) << drawn << across << height;
      }
    }
}

// The lower of two floors counts, wherever along the hole it lies: the dot's top is at edge/2 + 1, floors at 6.35 less
// their depths.
TEST(SideDotNearCut, CountsTheLowestFloorOverTheHole) {
  Board board = good_board();
  make_block(board, 8, 8, 3);
  board.inlays.push_back(board.inlays[0]);
  board.inlays[0].depth = 2.4;
  board.inlays[1].depth = 2.2;
  drill_side_dot(board, 2, 12);
  for (const double deeper : {-1.0, 1.0}) {
    board.inlays[0].shift_across = -20 + 4.5 * deeper;
    board.inlays[1].shift_across = -20 - 4.5 * deeper;
    EXPECT_NEAR(measured(board, "side-dot-near-cut"), 6.35 - 2.4 - (edge / 2 + 1), 1e-3) << deeper;
  }
}

}  // namespace
}  // namespace sagitta::test
