// The builder's own cuts as the clearing cutter leaves them, against closed forms of their areas.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "SampleDrawings.hpp"
#include "inlay/ArcSplineFit.hpp"
#include "inlay/CutFit.hpp"
#include "inlay/Flatten.hpp"
#include "layout/SampleBoards.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta::test {
namespace {

constexpr double pi = std::numbers::pi;

Cut block(double along, double across, Point at) {
  Cut cut;
  cut.name = "block";
  cut.shape = CutShape::block;
  cut.along = along, cut.across = across;
  cut.at = {at.x, at.y};
  cut.depth = 2;
  return cut;
}

Board with_cut(const Cut& cut, double clearing_cut = 0) {
  Board board = samples::octaves();
  board.cuts = {cut};
  if (clearing_cut > 0) {
    Cutter cutter;
    cutter.use = {CutterUse::pocket_clear};
    cutter.diameter = clearing_cut;
    board.cutters = {cutter};
  }
  return board;
}

std::variant<std::vector<FittedCut>, Faults> fitted(const Board& board, const Drawings& drawings = {}) {
  return fit_cuts(board, samples::sound(board), drawings);
}

FittedCut one(const Board& board, const Drawings& drawings = {}) {
  const auto cuts = fitted(board, drawings);
  if (const auto* faults = std::get_if<Faults>(&cuts)) {
    ADD_FAILURE() << faults->front().message;
    return {};
  }
  return std::get<std::vector<FittedCut>>(cuts).front();
}

FaultCode fault(const Board& board, const Drawings& drawings = {}) {
  const auto cuts = fitted(board, drawings);
  const auto* faults = std::get_if<Faults>(&cuts);
  return faults ? faults->front().code : FaultCode::not_made;
}

TEST(CutFit, SharpCornersWithoutAClearingCutter) {
  EXPECT_NEAR(area(one(with_cut(block(20, 8, {100, 0}))).outlines), 160, 1e-9);
}

// Each corner keeps a quarter of the square over the cutter's radius less its disc: together (4 - pi) r^2.
TEST(CutFit, CornersRoundAsTheClearingCutter) {
  const FittedCut cut = one(with_cut(block(20, 8, {100, 0}), 6));
  EXPECT_NEAR(area(cut.outlines), 160 - (4 - pi) * 9, 1e-9);
  EXPECT_NEAR(cut.departure, 3 * (std::numbers::sqrt2 - 1), 1e-9);
}

TEST(CutFit, ACutterThatDoesNotGoInIsAProblem) {
  EXPECT_EQ(fault(with_cut(block(20, 8, {100, 0}), 8.01)), FaultCode::cutter_too_large);
  EXPECT_EQ(fault(with_cut(block(20, 8, {100, 0}), 7.99)), FaultCode::not_made);
}

TEST(CutFit, AnOvalIsAnEllipseUntilTheCutterIsTooLargeForItsEnds) {
  Cut oval = block(16, 8, {100, 0});
  oval.shape = CutShape::oval;
  const FittedCut plain = one(with_cut(oval));
  EXPECT_NEAR(area(plain.outlines), pi * 8 * 4, 1e-3);
  EXPECT_TRUE(plain.ellipse);
  EXPECT_FALSE(one(with_cut(oval, 4.2)).ellipse);  // b^2 / a = 2, the cutter's radius 2.1
  EXPECT_TRUE(one(with_cut(oval, 3.8)).ellipse);
}

TEST(CutFit, MissesTheBoard) {
  // The board reaches from x = -8 to 384 and y = -28 to 28.
  EXPECT_EQ(fault(with_cut(block(20, 8, {100, 32.01}))), FaultCode::off_board);
  EXPECT_EQ(fault(with_cut(block(20, 8, {100, 31.9}))), FaultCode::not_made);
  EXPECT_EQ(fault(with_cut(block(20, 8, {-18.1, 0}))), FaultCode::off_board);
  Board left = with_cut(block(20, 8, {100, 31.9}));
  left.hand = Hand::left;
  EXPECT_EQ(fault(left), FaultCode::not_made);
}

TEST(CutFit, TheOtherHandIsTheMirror) {
  Cut turned_block = block(20, 8, {100, 5});
  turned_block.turn_degrees = 30;
  Board right = with_cut(turned_block), left = right;
  left.hand = Hand::left;
  const Box a = bounds(one(right).outlines), b = bounds(one(left).outlines);
  EXPECT_NEAR(a.low.x, b.low.x, 1e-9);
  EXPECT_NEAR(a.low.y, -b.high.y, 1e-9);
  EXPECT_NEAR((a.low.y + a.high.y) / 2, 5, 1e-9);
}

/// A drawing 2 wide and 1 high: a box with a half disc on its right end.
Drawings half_round() {
  PathLoop loop = polygon({{0, 0}, {1.5, 0}, {1.5, 1}, {0, 1}});
  loop[1] = arc_between({1.5, 0.5}, 0.5, {1.5, 0}, {1.5, 1}, true);
  Artwork artwork;
  artwork.regions.push_back({"#000000", {loop}});
  return {{"end.svg", artwork}};
}

Cut drawn_cut() {
  Cut cut;
  cut.name = "drawn";
  cut.shape = CutShape::drawn;
  cut.file = "end.svg";
  cut.along = 20;  // ten times as large
  cut.at = {100, 0};
  cut.depth = 2;
  return cut;
}

TEST(CutFit, DrawnLinesAndArcsStayWhatTheyAre) {
  const FittedCut cut = one(with_cut(drawn_cut()), half_round());
  EXPECT_NEAR(area(cut.outlines), 15 * 10 + pi * 25 / 2, 1e-9);
  const Box box = bounds(cut.outlines);
  EXPECT_NEAR(box.low.x, 90, 1e-9);  // the middle of its box lies at x = 100
  EXPECT_NEAR(box.high.y, 5, 1e-9);
}

// Two sharp corners are left: half of (4 - pi) r^2 each pair. The refit may stray by 0.002 mm along 56 mm of outline.
TEST(CutFit, DrawnCornersRoundAsTheClearingCutter) {
  const FittedCut cut = one(with_cut(drawn_cut(), 4), half_round());
  EXPECT_NEAR(area(cut.outlines), 150 + pi * 25 / 2 - (4 - pi) * 4 / 2, 0.01);
  EXPECT_EQ(fault(with_cut(drawn_cut(), 10.1), half_round()), FaultCode::cutter_too_large);
}

// A circle of radius 10 as four Bezier curves with the usual control points strays from it by at most 2.7e-4 of the
// radius; its own area, by the exact integral of the cubic, is 314.22...: compared with the same curves as fine chords.
TEST(CutFit, BezierCurvesBecomeArcsBesideThem) {
  const double k = 0.5522847498;
  PathLoop loop;
  for (int i = 0; i < 4; ++i) {
    const auto at = [&](double x, double y) { return turned({x, y}, i * pi / 2); };
    loop.push_back(Bezier{at(1, 0), at(1, k), at(k, 1), at(0, 1)});
  }
  Artwork artwork;
  artwork.regions.push_back({"#000000", {loop}});
  const FittedCut cut = one(with_cut(drawn_cut()), {{"end.svg", artwork}});
  double twice = 0;  // by 40,000 chords: 1e-7 of it
  const int n = 10000;
  for (const PathSegment& stroke : loop)
    for (int i = 0; i < n; ++i) {
      const Bezier& curve = std::get<Bezier>(stroke);
      twice += cross(curve.at(1.0 * i / n), curve.at((i + 1.0) / n));
    }
  EXPECT_NEAR(area(cut.outlines), 100 * twice / 2, 1e-3);  // 63 mm of outline, arcs within 2e-5 mm of it
}

TEST(CutFit, WhatLiesInsideIsCovered) {
  const FittedCut cut = one(with_cut(block(20, 8, {100, 0})));
  EXPECT_TRUE(covers(cut, {109.9, 3.9}));
  EXPECT_FALSE(covers(cut, {110.1, 0}));
}

}  // namespace
}  // namespace sagitta::test
