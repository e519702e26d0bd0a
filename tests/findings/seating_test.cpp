// How frets that are pressed in bend the board: values by hand.

#include "frets/Seating.hpp"

#include "findings/GoodBoard.hpp"

namespace sagitta::test {
namespace {

// 22 slots of 0.58 from 36.352 to 465.945, 429.593 mm; barbs of 0.62 are 0.04 wider. Strain 0.04 * 21 / 429.593 =
// 0.0019553; curvature 6 * 0.0019553 * 1.95 * 4.4 / 6.35^3 = 0.00039313; rise 0.00039313 * 429.593^2 / 8 = 9.0690.
TEST(Seating, BendsABoardAsTwoLayersDo) {
  Board board = good_board();
  board.wire.barb_width = 0.62;
  const auto seating = seating_of(prepared(board));
  ASSERT_TRUE(seating);
  EXPECT_NEAR(seating->interference, 0.04, 1e-9);
  EXPECT_NEAR(seating->length, 429.593, 0.001);
  EXPECT_NEAR(seating->rise, 9.069, 0.001);
  // I = 55.56 * 6.35^3 / 12 = 1185.5; 48 * 12000 * 1185.5 * 9.069 / 429.593^3 = 78.11 N
  EXPECT_NEAR(seating->load, 78.11, 0.05);
  board.blank.material = "maple";  // 12.6 GPa for 12
  EXPECT_NEAR(seating_of(prepared(board))->load, 78.11 * 12.6 / 12, 0.05);
  board.materials["maple"].modulus = 6;
  EXPECT_NEAR(seating_of(prepared(board))->load, 78.11 / 2, 0.05);
}

TEST(Seating, IsJudgedByTheMeasuredSlot) {
  Board board = good_board();
  board.wire.barb_width = 0.62;
  board.measured.slot_width = 0.60;
  EXPECT_NEAR(seating_of(prepared(board))->interference, 0.02, 1e-9);
  EXPECT_NEAR(measured(board, "frets-bend-board"), 9.069 / 2, 0.001);
  board.measured.slot_width = 0.65;
  EXPECT_NEAR(found(board, "frets-need-glue")->value, -0.03, 1e-9);
  EXPECT_FALSE(found(board, "frets-bend-board"));
}

TEST(Seating, SaysNothingWithoutBarbs) {
  Board board = good_board();
  EXPECT_FALSE(found(board, "frets-need-glue"));
  EXPECT_FALSE(found(board, "frets-bend-board"));
}

}  // namespace
}  // namespace sagitta::test
