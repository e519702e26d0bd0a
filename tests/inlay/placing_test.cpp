// Where artwork comes to lie on the board, how large, and where it is cut off.

#include <gtest/gtest.h>

#include <cmath>

#include "inlay/ArcSplineFit.hpp"
#include "inlay/FigureStore.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Inlays.hpp"
#include "inlay/SampleDrawings.hpp"

namespace sagitta {
namespace {

using namespace test;

constexpr double scale = 648;

/// A board 50 mm wide all along, with one drawing at frets 5, 7 and 12, without cutters: corners stay sharp.
Board board_with_drawing() {
  Board board;
  board.scale.length = scale;
  board.scale.frets = 20;
  board.strings = {6, 37, 40, StringSpacing::equal_centres, {}, 1, {}};
  board.board.thickness = 6.35;
  board.board.nut_width = board.board.heel_width = 50;
  board.surface.profile = Profile::single;
  board.surface.radius_at_nut = 305;
  Inlay inlay;
  inlay.shape = InlayShape::artwork;
  inlay.file = "block.svg";
  inlay.frets = {5, 7, 12};
  inlay.along = 12;
  inlay.depth = 1.5;
  board.inlays = {inlay};
  return board;
}

/// A block as long as it is wide, or so many times as wide.
Inlays fitted(const Board& board, double width = 1) {
  const Drawings drawings{{"block.svg", drawing({{"#202020", {box({0, 0}, {10, 10 * width})}}})}};
  auto made = fit_inlays(board, std::get<Layout>(lay_out(board)), drawings);
  if (const auto* faults = std::get_if<Faults>(&made)) throw std::runtime_error(faults->front().message);
  return std::get<Inlays>(std::move(made));
}

double along(const Loops& loops) { return bounds(loops).high.x - bounds(loops).low.x; }

// A disc of 20 mm and beside it an arc whose radii, 0.001 and 10, are scaled up to span 20: 200,000 mm high.
TEST(Placing, RefusesADrawingThatWouldBeLargerThanAKeyCanAskFor) {
  const Artwork vast = std::get<Artwork>(svg_artwork(
      "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='100mm' viewBox='0 0 100 100'>"
      "<path d='M0 50a10 10 0 0 1 20 0a10 10 0 0 1 -20 0z M10 50a0.001 10 0 0 1 20 0a10 10 0 0 1 -20 0z'/></svg>"));
  Board board = board_with_drawing();
  board.inlays[0].colours.clear();
  const auto made = fit_inlays(board, std::get<Layout>(lay_out(board)), {{"block.svg", vast}});
  const auto& faults = std::get<Faults>(made);
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(faults[0].key, board.inlays[0].along ? "inlays[0].along" : "inlays[0].across");
  EXPECT_EQ(faults[0].code, FaultCode::not_allowed);
}

// A gradient alone fills nothing: what was left out, where it stands and what to do is said, not that there are notes.
TEST(Placing, NamesWhatIsLeftOutOfADrawingThatFillsNothing) {
  const Artwork empty = std::get<Artwork>(svg_artwork(
      "<svg xmlns='http://www.w3.org/2000/svg' width='9mm' height='9mm' viewBox='0 0 9 9'><linearGradient id='g'/>\n"
      "<rect width='9' height='9' fill='url(#g)'/></svg>"));
  ASSERT_TRUE(empty.regions.empty());
  ASSERT_EQ(empty.notes.size(), 1U);
  Board board = board_with_drawing();
  board.inlays[0].colours["#202020"] = "shell";
  const auto made = fit_inlays(board, std::get<Layout>(lay_out(board)), {{"block.svg", empty}});
  const auto& faults = std::get<Faults>(made);
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(faults[0].key, "inlays[0].file");
  EXPECT_EQ(faults[0].hint, empty.notes[0].hint);
  EXPECT_EQ(faults[0].code, FaultCode::drawing_empty);
  EXPECT_EQ(faults[0].where, (FeatureId{FeatureId::Kind::inlay, 0}));
  EXPECT_EQ(empty.notes[0].code, FaultCode::left_out);
  EXPECT_TRUE(faults[0].message.ends_with(empty.notes[0].message));
  EXPECT_NE(empty.notes[0].message.find('2'), std::string::npos);  // the line
}

/// Space n of a scale is L 2^(-(n-1)/12) (1 - 2^(-1/12)) long: each is 2^(-1/12) of the one before (equal temperament).
TEST(Placing, KeepsOneSizeOrFollowsTheSpaces) {
  Board board = board_with_drawing();
  for (const InlayPiece& piece : fitted(board).pieces) EXPECT_NEAR(along(piece.piece), 12, 1e-4) << piece.fret;
  board.inlays[0].sizes = InlaySizes::by_space;
  const Inlays inlays = fitted(board);
  ASSERT_EQ(inlays.pieces.size(), 3U);
  for (const InlayPiece& piece : inlays.pieces)
    EXPECT_NEAR(along(piece.piece), 12 * std::exp2(-(piece.fret - 5) / 12.0), 1e-4) << piece.fret;
}

TEST(Placing, ADrawingThatOnlyMovesIsNotFittedAgain) {
  Board board = board_with_drawing();
  const Drawings drawings{{"block.svg", drawing({{"#202020", {box({0, 0}, {10, 10})}}})}};
  FigureStore store;
  const auto fit = [&](const ProgressCounter& steps) {
    return std::get<Inlays>(fit_inlays(board, std::get<Layout>(lay_out(board)), drawings, {}, steps, &store)).pieces;
  };
  const ProgressCounter first, moved_only, larger;
  const auto before = fit(first);
  EXPECT_GT(first.expected(), 0);
  board.inlays[0].shift_across = 3;
  const auto after = fit(moved_only);
  EXPECT_EQ(moved_only.expected(), 0);
  ASSERT_EQ(before.size(), after.size());
  for (std::size_t i = 0; i < before.size(); ++i)
    EXPECT_NEAR(bounds(after[i].piece).low.y, bounds(before[i].piece).low.y + 3, 1e-9);
  board.inlays[0].along = 13;
  fit(larger);
  EXPECT_GT(larger.expected(), 0);
}

TEST(Placing, RunsOutOverTheEdgeUnlessItIsKeptFromIt) {
  Board board = board_with_drawing();
  const auto half_width = [&](double width) { return bounds(fitted(board, width).pieces.front().piece).high.y; };
  EXPECT_NEAR(half_width(5), 30, 1e-4);
  board.inlays[0].edge_left = 0;
  EXPECT_NEAR(half_width(5), 25, 1e-4);
  board.inlays[0].edge_left = 3;
  EXPECT_NEAR(half_width(5), 22, 1e-4);
  EXPECT_NEAR(half_width(3), 18, 1e-4);  // it does not come so far
  board.binding = Binding{2, 0, {}, {}};
  EXPECT_NEAR(half_width(5), 20, 1e-4);
}

TEST(Placing, CutsOffWhereTheDrawingLiesTurnedShiftedAndLeftHanded) {
  Board board = board_with_drawing();
  board.inlays[0].edge_left = 2;
  board.inlays[0].turn_degrees = 35;
  board.inlays[0].shift_across = 6;
  const Inlays right = fitted(board, 6);
  board.hand = Hand::left;
  const Inlays left = fitted(board, 6);
  ASSERT_EQ(right.pieces.size(), left.pieces.size());
  for (std::size_t i = 0; i < right.pieces.size(); ++i) {
    const Box box = bounds(right.pieces[i].piece), other = bounds(left.pieces[i].piece);
    EXPECT_NEAR(box.high.y, 23, 1e-4);
    EXPECT_NEAR(box.low.y, -23, 1e-4);
    EXPECT_NEAR(other.high.y, -box.low.y, 1e-4);
    EXPECT_NEAR(other.low.x, box.low.x, 1e-4);
    EXPECT_NEAR(std::abs(area(left.pieces[i].piece)), area(right.pieces[i].piece), 1e-2);
  }
}

}  // namespace
}  // namespace sagitta
