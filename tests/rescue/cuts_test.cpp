// Pockets, chips, the radius and the neck: worked out by hand (the closed form stands beside each) or by scanning.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "measured/AsMeasured.hpp"
#include "rescue/ChipRescue.hpp"
#include "rescue/Rescued.hpp"

namespace sagitta::test {
namespace {

class DeepPocket : public ::testing::TestWithParam<double> {};

// On the centre line the floor lies as deep as the pocket: the piece must stand 0.05 proud of it, the finding's limit.
TEST_P(DeepPocket, AsksForAThickerPieceOrPacking) {
  Board board = good_board();
  board.inlays[0].piece_thickness = 1.6;
  board.measured.pocket_depths["shell-01"] = GetParam();
  const std::vector<Way> ways = ways_of(board);
  const Way* thicker = named(ways, "thicker-piece");
  ASSERT_TRUE(thicker);
  EXPECT_NEAR(number(*thicker, "inlays[0].piece_thickness"), GetParam() + 0.05, agree);
  const Way* packing = named(ways, "packing");
  ASSERT_TRUE(packing);
  EXPECT_NEAR(figure(*packing, "packing"), GetParam() + 0.05 - 1.6, agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, DeepPocket, ::testing::Values(1.62, 1.7, 2.4));

struct Through {
  double cut, planned;
};
class LostFloor : public ::testing::TestWithParam<Through> {};

// Less than 0.3 of the 6.35 is left under it: the pocket is filled and cut again as planned.
TEST_P(LostFloor, IsFilled) {
  Board board = good_board();
  board.inlays[0].depth = GetParam().planned;
  board.measured.pocket_depths["shell-01"] = GetParam().cut;
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "fill-pocket");
  ASSERT_TRUE(way);
  EXPECT_NEAR((std::get<std::map<std::string, double>>(way->edits.front().value).at("shell-01")), GetParam().planned,
              agree);
  EXPECT_NEAR(figure(*way, "filling"), GetParam().cut - GetParam().planned, agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, LostFloor, ::testing::Values(Through{6.2, 1.5}, Through{6.1, 2}, Through{6.3, 1.2}));

class WidePocket : public ::testing::TestWithParam<double> {};

TEST_P(WidePocket, TakesALargerPieceOrAWiderJoint) {
  Board board = good_board();
  Cutter cutter;
  cutter.name = "fine", cutter.use = {CutterUse::pocket_detail, CutterUse::piece};
  cutter.diameter = 2, cutter.cutting_length = 8, cutter.measured_cut = 2 + GetParam();
  board.cutters = {cutter};
  board.measured.done = {Operation::pockets};
  const std::vector<Way> ways = ways_of(board);
  ASSERT_TRUE(named(ways, "larger-piece"));
  EXPECT_NEAR(number(*named(ways, "larger-piece"), "inlays[0].diameter"), 6 + GetParam(), agree);
  EXPECT_NEAR(number(*named(ways, "wider-joint"), "inlays[0].clearance"), 0.05 + GetParam() / 2, agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, WidePocket, ::testing::Values(0.03, 0.08, 0.2));

struct ChipCase {
  double along, across, diameter;
};
class ChippedPocket : public ::testing::TestWithParam<ChipCase> {};

// A dot about its own middle covers a chip of diameter d at distance a when its diameter is 2 a + d; one about the chip
// when it is d.
TEST_P(ChippedPocket, IsCoveredByTheSmallestDot) {
  const auto& [along, across, diameter] = GetParam();
  Board board = good_board();
  const Point dot = drawn(board).layout.markers[1].centre;  // fret 5
  board.measured.chips = {{dot.x + along, across, diameter}};
  const std::vector<Way> ways = ways_of(board);
  const Way* own = named(ways, "cover-with-own-shape");
  ASSERT_TRUE(own);
  const Board next = edited(board, own->edits);
  ASSERT_EQ(next.inlays.size(), 2U);
  EXPECT_EQ(next.inlays[1].frets, std::vector{5});
  EXPECT_NEAR(next.inlays[1].diameter, 2 * std::hypot(along, across) + diameter, agree);
  const Way* at_chip = named(ways, "cover-with-dot");
  ASSERT_TRUE(at_chip);
  EXPECT_NEAR(figure(*at_chip, "diameter"), diameter, agree);
  for (const Way* way : {own, at_chip, named(ways, "cover-with-block")}) {
    ASSERT_TRUE(way);
    for (const Finding& finding : way->findings) EXPECT_NE(finding.name, "chip-left") << way->name;
  }
}

INSTANTIATE_TEST_SUITE_P(Boards, ChippedPocket,
                         ::testing::Values(ChipCase{3, 0, 1.2}, ChipCase{2, -2.5, 0.8}, ChipCase{0, 4, 2}));

/// A piece of 2 a by 2 b about (150, 0), turned, and a chip whose middle lies at (x, y) from its own.
struct GrowthCase {
  double a, b, turn_degrees, x, y, radius;
};
class GrownPiece : public ::testing::TestWithParam<GrowthCase> {
 protected:
  /// The growth that the board's own rule finds for this shape.
  std::optional<double> found(InlayShape shape) const {
    const auto& [a, b, turn, x, y, radius] = GetParam();
    Inlay inlay;
    inlay.shape = shape;
    inlay.along = 2 * a, inlay.across = 2 * b, inlay.turn_degrees = turn;
    return smallest_growth(good_board(), inlay, {0, 5, {150, 0}, 0}, {{150 + x, y}, radius});
  }
  /// The chip's middle along the piece's own axes.
  Point middle() const {
    const double t = GetParam().turn_degrees * std::numbers::pi / 180, x = GetParam().x, y = GetParam().y;
    return {std::abs(x * std::cos(t) + y * std::sin(t)), std::abs(y * std::cos(t) - x * std::sin(t))};
  }
};

// A diamond's sides are x/a + y/b = k: the chip's rim touches one where k = x/a + y/b + r sqrt(1/a^2 + 1/b^2).
TEST_P(GrownPiece, OfADiamondTouchesTheChipWithASide) {
  const auto& [a, b, turn, x, y, radius] = GetParam();
  const double k = middle().x / a + middle().y / b + radius * std::hypot(1 / a, 1 / b);
  ASSERT_TRUE(found(InlayShape::diamond));
  EXPECT_NEAR(*found(InlayShape::diamond), std::max(1.0, k), agree);
}

TEST_P(GrownPiece, OfABlockTouchesTheChipWithASide) {
  const auto& [a, b, turn, x, y, radius] = GetParam();
  ASSERT_TRUE(found(InlayShape::block));
  EXPECT_NEAR(*found(InlayShape::block), std::max({1.0, (middle().x + radius) / a, (middle().y + radius) / b}), agree);
}

// Scanned: the most of (x/a)^2 + (y/b)^2 over the chip's rim is the square of the growth.
TEST_P(GrownPiece, OfAnOvalIsWhatScanningSays) {
  const auto& [a, b, turn, x, y, radius] = GetParam();
  double most = 0;
  for (int i = 0; i < 2000000; ++i) {
    const double angle = 2 * std::numbers::pi * i / 2000000;
    const Point rim{middle().x + radius * std::cos(angle), middle().y + radius * std::sin(angle)};
    most = std::max(most, std::hypot(rim.x / a, rim.y / b));
  }
  ASSERT_TRUE(found(InlayShape::oval));
  EXPECT_NEAR(*found(InlayShape::oval), std::max(1.0, most), agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, GrownPiece,
                         ::testing::Values(GrowthCase{2.5, 2, 0, 2, 1.5, 0.6}, GrowthCase{4, 1.5, 0, -3.5, -1, 0.4},
                                           GrowthCase{3, 5, 30, 1, 4.5, 0.8}, GrowthCase{2, 2.5, -75, 2.2, 0, 0.5},
                                           GrowthCase{3, 3, 10, 0.5, 0.2, 0.3}));

class ChippedEdge : public ::testing::TestWithParam<ChipCase> {};

TEST_P(ChippedEdge, IsTakenByABinding) {
  const auto& [along, across, diameter] = GetParam();
  Board board = good_board();
  board.measured.chips = {{along, 27.78 - across, diameter}};
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "binding");
  ASSERT_TRUE(way);
  EXPECT_NEAR(number(*way, "binding.width"), across + diameter / 2, agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, ChippedEdge,
                         ::testing::Values(ChipCase{60, 0, 2}, ChipCase{200, 0.5, 1.5}, ChipCase{333, 1, 3}));

class DeepRadius : public ::testing::TestWithParam<double> {};

// The middle is lower by what was measured; a dot of 6 mm keeps, at its rim at y = 3, depth - loss - drop(3).
TEST_P(DeepRadius, TellsWhatPiecesKeep) {
  Board board = good_board();
  const double lost = GetParam();
  board.measured.thickness = {{50, 0, 6.35 - lost}, {250, 0, 6.35 - lost}};
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "thinner-board");
  ASSERT_TRUE(way);
  EXPECT_NEAR(number(*way, "board.thickness"), 6.35 - lost, agree);
  EXPECT_NEAR(number(*way, "inlays[0].depth"), 1.5 - lost, agree);
  const double drop = 304.8 - std::sqrt(304.8 * 304.8 - 9);
  EXPECT_NEAR(figure(*way, "shell-01 keeps"), 1.5 - lost - drop, 1e-4);
  if (lost < 1.2 - drop) return;
  const Way* deeper = named(ways, "deeper-pockets");  // 0.3 is to be kept at the rim
  ASSERT_TRUE(deeper);
  EXPECT_NEAR(number(*deeper, "inlays[0].depth"), 0.3 + drop, 1e-4);
}

INSTANTIATE_TEST_SUITE_P(Boards, DeepRadius, ::testing::Values(0.1, 0.4, 1.25));

class NarrowBoard : public ::testing::TestWithParam<double> {};

TEST_P(NarrowBoard, IsBroughtBackByABinding) {
  Board board = good_board();
  board.neck.emplace();
  board.neck->nut_width = board.neck->body_width = 55.56;
  board.neck->body_at = 400;
  const double lack = GetParam();
  board.measured.widths = {{0, 55.56 - lack}, {400, 55.56 - lack}};
  ASSERT_TRUE(found(std::get<Board>(as_measured(board)), "board-narrower-than-neck"));
  const std::vector<Way> ways = ways_of(board);
  const Way* way = named(ways, "binding");
  ASSERT_TRUE(way);
  EXPECT_NEAR(number(*way, "binding.width"), lack / 2, agree);
  EXPECT_NEAR(drawn(edited(board, way->edits)).layout.half_width(200), 27.78, agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, NarrowBoard, ::testing::Values(0.4, 0.9, 2.0));

TEST(Rescue, NothingMeasuredAsksForNothing) { EXPECT_TRUE(ways_of(good_board()).empty()); }

class ThinnerBlank : public ::testing::TestWithParam<double> {};

TEST_P(ThinnerBlank, ThatStillFitsGoesOn) {
  Board board = good_board();
  board.measured.blank_thickness = GetParam();
  const std::vector<Way> ways = ways_of(board);
  ASSERT_FALSE(ways.empty());
  EXPECT_EQ(ways.front().name, "go-on");
  EXPECT_NEAR(number(ways.front(), "blank.thickness"), GetParam(), agree);
}

INSTANTIATE_TEST_SUITE_P(Boards, ThinnerBlank, ::testing::Values(6.4, 6.9, 7.1));

TEST(Edits, MakeTheSecondBoardOfTheFirst) {
  const Board board = good_board();
  Board other = board;
  other.board.thickness = 6;
  other.inlays[0].depth = 1.2;
  other.surface.radius_at_nut.reset();
  EXPECT_EQ(edited(board, edits_between(board, other)), other);
  Inlay block;
  block.shape = InlayShape::block;
  block.frets = {4};
  block.along = 3, block.across = 5, block.depth = 1;
  other = board;
  other.inlays.push_back(block);
  EXPECT_EQ(edited(board, new_inlay(board, block)), other);
}

}  // namespace
}  // namespace sagitta::test
