// Lengths of binding and lines, by hand on boards with straight ends.

#include "findings/GoodBoard.hpp"
#include "wood/EdgeStrips.hpp"

namespace sagitta::test {
namespace {

// Scale 647.7, 22 frets, 10 past the last at 465.945, and 3.2 + 3 behind the nut: 482.145 from end to end, the edges
// parallel to the centre line.
TEST(EdgeStrips, AreAsLongAsTheEdge) {
  Board board = good_board();
  EXPECT_TRUE(edge_strips(prepared(board)).empty());
  board.binding = Binding{1.5, 3, {0.5, 0.25}, {"maple", "ebony"}};
  const std::vector<EdgeStrip> strips = edge_strips(prepared(board));
  ASSERT_EQ(strips.size(), 6U);
  for (const EdgeStrip& strip : strips) {
    EXPECT_NEAR(strip.length, 482.145, 0.0006);
    EXPECT_EQ(strip.height, 3);
  }
  EXPECT_EQ(strips[0].line, -1);
  EXPECT_EQ(strips[0].thickness, 1.5);
  EXPECT_EQ(strips[2].line, 1);
  EXPECT_EQ(strips[2].material, "ebony");
  EXPECT_NE(strips[0].side, strips[3].side);
}

// Edges that lean by 5 on 475.945 (from x = 0 to the end): a line parallel to them, between square ends, is longer than
// the board by 1 / cos.
TEST(EdgeStrips, FollowALeaningEdge) {
  Board board = good_board();
  board.board.heel_width = 65.56;
  board.binding = Binding{1.5, 0, {}, {}};
  const double lean = 5 / 475.945;
  const std::vector<EdgeStrip> strips = edge_strips(prepared(board));
  ASSERT_EQ(strips.size(), 2U);
  EXPECT_NEAR(strips[0].length, 482.145 * std::sqrt(1 + lean * lean), 0.0006);
  EXPECT_GT(strips[0].height, 4);  // all the way: the edge's greatest height
}

}  // namespace
}  // namespace sagitta::test
