// What the cutters make of a drawing, against closed forms and hand arithmetic.

#include <numbers>

#include "findings/DrawingPairs.hpp"
#include "inlay/FitTolerance.hpp"

namespace sagitta::test {
namespace {

/// A drawing's own rounding to whole microns and the room that a fit leaves its cutter.
constexpr double room = tolerance::cutter_room;

Board with(const std::vector<Patch>& patches, double cutter) {
  Board board = good_board();
  let_in(board, patches, cutter);
  return board;
}

TEST(DrawingFindings, StopWhereADrawnColourHasNoPiece) {
  const Board board = with({{"#202020", {{0, 0, 4, 4}}}, {"#c02020", {{6, 0, 0.49, 4}}}}, 0.53);
  const auto lost = found(board, "colour-lost");
  ASSERT_TRUE(lost);
  EXPECT_EQ(lost->severity, Severity::stop);
  EXPECT_EQ(lost->value, 0);
  EXPECT_EQ(lost->limit, 1);
  EXPECT_NE(lost->message.find("bone"), std::string::npos);
  // The strip's middle is (6.245, 2) of 6.49 x 4, whose middle lies on the marker.
  const Layout layout = std::get<Layout>(lay_out(board));
  EXPECT_NEAR(lost->at[0], layout.markers.front().centre.x + 6.245 - 3.245, 0.001);
  EXPECT_NEAR(lost->at[1], 0, 0.001);
  EXPECT_FALSE(found(board, "colour-mostly-lost"));
}

// A vein of 0.49 across a leaf: a cutter of 0.53 closes the gap for it. What was drawn for the vein is no gap to fill
// with glue: the leaf lies there.
TEST(DrawingFindings, CallAVeinThatTheLeafCoversNoGapToFill) {
  const std::vector<Patch> leaf{{"#202020", {{0, 0, 6, 6}}}, {"#c02020", {{2.755, 0, 0.49, 6}}}};
  const Board board = with(leaf, 0.53);
  ASSERT_TRUE(found(board, "colour-lost"));
  const auto inlays = std::get<Inlays>(fit_inlays(board, std::get<Layout>(lay_out(board))));
  const auto vein = std::find_if(inlays.figures.begin(), inlays.figures.end(),
                                 [](const RegionFigures& figures) { return figures.material == "bone"; });
  ASSERT_NE(vein, inlays.figures.end());
  EXPECT_NEAR(vein->lost_area, 0.49 * 6, 0.001);
  EXPECT_NEAR(vein->lost_area, vein->gap_area + vein->void_area + vein->covered_area, 1e-9);
}

TEST(DrawingFindings, SayHowMuchOfAColourIsLeft) {
  const Board board = with({{"#202020", {{0, 0, 2, 2}, {3, 0, 0.4, 12}}}}, 0.5);
  const double r = 0.25 + room, left = 4 - (4 - std::numbers::pi) * r * r;
  EXPECT_NEAR(measured(board, "colour-mostly-lost"), 100 * left / (4 + 0.4 * 12), 0.05);
  EXPECT_FALSE(found(board, "colour-lost"));
}

TEST(DrawingFindings, MeasureAGapAsItIsDrawn) {
  const Board board = with({fork(0.3)}, 0.5);
  const auto gap = found(board, "gap-too-narrow");
  ASSERT_TRUE(gap);
  EXPECT_NEAR(gap->value, 0.3 - 0.5, 0.0001);
  EXPECT_NEAR(gap->at[1], 0, 0.001);  // between the two arms
  // A hole that the cutter does not enter: a ring's, 0.4 wide.
  const Board ring = with({{"#202020", {{0, 0, 4, 1.8}, {0, 2.2, 4, 1.8}, {0, 0, 1.8, 4}, {2.2, 0, 1.8, 4}}}}, 0.5);
  EXPECT_NEAR(found(ring, "gap-too-narrow").value().value, 0.4 - 0.5, 0.0005);
}

TEST(DrawingFindings, MeasureTheWoodBetweenTwoPockets) {
  const auto apart = [](double gap) { return with({{"#202020", {{0, 0, 3, 3}, {3 + gap, 0, 3, 3}}}}, 0.5); };
  const auto merged = found(apart(0.12), "pockets-merge");
  ASSERT_TRUE(merged);
  EXPECT_NEAR(merged->value, 0.12 - 3 * 0.05, 0.0005);
  EXPECT_NEAR(found(apart(0.02), "pockets-merge").value().value, 0.05 - 3 * 0.05, 0.002);  // parted to the clearance
  // Two materials that are drawn touching are meant to share a pocket; drawn apart they are not.
  EXPECT_FALSE(found(with({{"#202020", {{0, 0, 3, 3}}}, {"#c02020", {{3, 0, 3, 3}}}}, 0.5), "pockets-merge"));
  EXPECT_TRUE(found(with({{"#202020", {{0, 0, 3, 3}}}, {"#c02020", {{3.1, 0, 3, 3}}}}, 0.5), "pockets-merge"));
}

TEST(DrawingFindings, MeasureWhatIsAdded) {
  const double r = 0.4 + room;
  const Board board = with({{"#202020", {{0, 0, 4, 2}, {0, 0, 2, 4}}}}, 0.8);
  EXPECT_NEAR(measured(board, "area-added"), (1 - std::numbers::pi / 4) * r * r, 0.0005);
}

}  // namespace
}  // namespace sagitta::test
