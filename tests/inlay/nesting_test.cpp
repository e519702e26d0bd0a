// Pieces on sheets: what must hold of any placement, measured on the placed outlines themselves.

#include "inlay/Nesting.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;

InlayPiece piece(const std::string& name, Loops outline, const std::string& material = "shell") {
  InlayPiece one;
  one.name = name;
  one.material = material;
  one.thickness = 1.5;
  one.piece = std::move(outline);
  return one;
}

Sheet sheet(double length, double width, Pattern pattern = Pattern::none, const std::string& material = "shell") {
  Sheet made{material, length, width, 1.6, pattern};
  made.margin = made.clamp = 0;
  return made;
}

NestRules rules(NestTurns turns = NestTurns::free) {
  NestRules some;
  some.cutter = 0.8;
  some.web = 0.7;
  some.turns = turns;
  return some;
}

/// Discs, boxes, moons and rings of many sizes, away from the origin as on a board.
std::vector<InlayPiece> many(unsigned seed, int count) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> size(2, 14), place(0, 400);
  std::vector<InlayPiece> all;
  for (int i = 0; i < count; ++i) {
    const Point at{place(random), place(random) / 10 - 20};
    const double a = size(random), b = size(random);
    Loops loops;
    if (i % 4 == 0) loops = {circle(at, a / 2)};
    if (i % 4 == 1) loops = {rectangle(at, at + Point{a, b})};
    if (i % 4 == 2) {  // a moon: two arcs of one chord
      const CurveSegment outer = arc(at, a / 2, pi / 2, pi);
      const CurveSegment inner = arc_between(at + Point{a, 0}, std::hypot(a, a / 2), outer.b, outer.a, false);
      loops = {{outer, inner}};
    }
    if (i % 4 == 3) {
      Loop hole;
      for (const CurveSegment& part : circle(at, a / 4)) hole.insert(hole.begin(), part.reversed());
      loops = {circle(at, a / 2), hole};
    }
    all.push_back(piece("shell-" + std::to_string(i), loops));
  }
  return all;
}

std::vector<Point> dense(const Loops& loops) {
  std::vector<Point> points;
  for (const Loop& loop : loops)
    for (const CurveSegment& part : loop) {
      const int count = 2 + static_cast<int>(part.length() / 0.05);
      for (int i = 0; i < count; ++i) points.push_back(part.at(static_cast<double>(i) / count));
    }
  return points;
}

/// Whether their boxes are within `reach`.
bool near(const std::vector<Point>& a, const std::vector<Point>& b, double reach) {
  Box first, second;
  for (const Point p : a) first.add(p);
  for (const Point p : b) second.add(p);
  return first.overlaps(second, reach);
}

double gap(const std::vector<Point>& a, const std::vector<Point>& b) {
  double least = 1e300;
  for (const Point p : a)
    for (const Point q : b) least = std::min(least, distance(p, q));
  return least;
}

bool inside(const Loops& loops, Point p) {
  int turns = 0;
  for (const Loop& loop : loops) turns += winding(loop, p);
  return turns != 0;
}

double total(const Loops& loops) {
  double sum = 0;
  for (const Loop& loop : loops) sum += area(loop);
  return sum;
}

TEST(Nesting, KeepsTheSpacingAndTheSheet) {
  for (unsigned seed = 1; seed <= 5; ++seed) {
    const auto pieces = many(seed, 60);
    const Nesting nesting = *nest(pieces, {sheet(120, 60), sheet(90, 50)}, rules());
    std::size_t placed = 0;
    for (const NestedSheet& one : nesting.sheets) {
      std::vector<std::vector<Point>> outlines;
      double used = 0;
      for (const NestedPiece& nested : one.pieces) {
        outlines.push_back(dense(nested.outline));
        used += total(nested.outline);
        for (const Point p : outlines.back()) {
          EXPECT_GE(std::min({p.x, p.y, one.length - p.x, one.width - p.y}), rules().spacing() - 1e-9) << nested.name;
        }
      }
      for (std::size_t i = 0; i < outlines.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
          if (!near(outlines[i], outlines[j], rules().spacing())) continue;
          EXPECT_GE(gap(outlines[i], outlines[j]), rules().spacing() - 1e-9)
              << one.pieces[i].name << " " << one.pieces[j].name;
          EXPECT_FALSE(inside(one.pieces[i].outline, outlines[j][0])) << one.pieces[j].name;
          EXPECT_FALSE(inside(one.pieces[j].outline, outlines[i][0])) << one.pieces[i].name;
        }
      EXPECT_NEAR(one.used, used, 1e-9);
      placed += one.pieces.size();
    }
    EXPECT_EQ(placed + nesting.no_room.size(), pieces.size());
    EXPECT_TRUE(nesting.no_room.empty());
  }
}

TEST(Nesting, OutlinesAreThePiecesTurnedAndMoved) {
  const auto pieces = many(7, 20);
  const Nesting nesting = *nest(pieces, {sheet(120, 60)}, rules());
  for (const NestedPiece& nested : nesting.sheets.at(0).pieces) {
    const auto drawn =
        std::find_if(pieces.begin(), pieces.end(), [&](const InlayPiece& one) { return one.name == nested.name; });
    ASSERT_NE(drawn, pieces.end());
    EXPECT_NEAR(total(nested.outline), total(drawn->piece), 1e-9);
    for (std::size_t i = 0; i < drawn->piece.size(); ++i)
      for (std::size_t j = 0; j < drawn->piece[i].size(); ++j) {
        const Point wanted = turned(drawn->piece[i][j].at(0.3), nested.turn) + nested.move;
        EXPECT_NEAR(distance(nested.outline[i][j].at(0.3), wanted), 0, 1e-9);
      }
  }
}

TEST(Nesting, IsTheSameEveryTime) {
  const auto pieces = many(3, 40);
  const Nesting a = *nest(pieces, {sheet(120, 60)}, rules()), b = *nest(pieces, {sheet(120, 60)}, rules());
  ASSERT_EQ(a.sheets.size(), b.sheets.size());
  for (std::size_t i = 0; i < a.sheets[0].pieces.size(); ++i) {
    EXPECT_EQ(a.sheets[0].pieces[i].name, b.sheets[0].pieces[i].name);
    EXPECT_EQ(a.sheets[0].pieces[i].outline, b.sheets[0].pieces[i].outline);
  }
}

// A bar 40 long fits across a sheet 30 long and 50 wide only with a quarter turn.
TEST(Nesting, TurnsOnlyAsAllowed) {
  const std::vector<InlayPiece> bar{piece("bar", {rectangle({100, 0}, {140, 5})})};
  const auto placed = [&](NestTurns turns, Pattern pattern) {
    return nest(bar, {sheet(30, 50, pattern)}, rules(turns))->no_room.empty();
  };
  EXPECT_TRUE(placed(NestTurns::free, Pattern::none));
  EXPECT_FALSE(placed(NestTurns::free, Pattern::along));
  EXPECT_FALSE(placed(NestTurns::half, Pattern::none));
  EXPECT_FALSE(placed(NestTurns::none, Pattern::none));
  for (const NestTurns turns : {NestTurns::none, NestTurns::half}) {
    const Nesting many_pieces = *nest(many(5, 30), {sheet(150, 80)}, rules(turns));
    for (const NestedPiece& one : many_pieces.sheets.at(0).pieces)
      EXPECT_TRUE(one.turn == 0 || (turns == NestTurns::half && one.turn == pi)) << one.turn;
  }
}

TEST(Nesting, NamesWhatHasNoRoom) {
  std::vector<InlayPiece> pieces{piece("shell-01", {rectangle({0, 0}, {50, 50})}),
                                 piece("shell-02", {circle({0, 0}, 3)}), piece("bone-01", {circle({0, 0}, 3)}, "bone")};
  pieces.push_back(pieces[1]);
  pieces.back().name = "shell-03";
  pieces.back().thickness = 2;  // the sheet is 1.6 thick
  const Nesting nesting = *nest(pieces, {sheet(40, 40)}, rules());
  EXPECT_EQ(nesting.no_room, (std::vector<std::string>{"bone-01", "shell-01", "shell-03"}));
  ASSERT_EQ(nesting.sheets.size(), 1U);
  EXPECT_EQ(nesting.sheets[0].pieces.size(), 1U);
}

// What just fits is placed: the sheet's side less a spacing at each edge.
TEST(Nesting, FillsASheetToTheEdge) {
  const double side = 40 - 2 * rules().spacing();
  EXPECT_TRUE(nest({piece("a", {rectangle({0, 0}, {side, side})})}, {sheet(40, 40)}, rules())->no_room.empty());
  EXPECT_FALSE(
      nest({piece("a", {rectangle({0, 0}, {side + 0.001, side})})}, {sheet(40, 40)}, rules())->no_room.empty());
}

TEST(Nesting, MarksTheCentreLines) {
  const Nesting nesting = *nest(many(1, 3), {sheet(80, 40)}, rules());
  EXPECT_EQ(nesting.sheets.at(0).along, (LineSegment{{0, 20}, {80, 20}}));
  EXPECT_EQ(nesting.sheets.at(0).across, (LineSegment{{40, 0}, {40, 40}}));
}

TEST(Nesting, TakesTheWidestCutOfThePieceCutters) {
  Board board;
  const auto cutter = [&](CutterUse use, double diameter) {
    Cutter one;
    one.use = {use};
    one.diameter = diameter;
    board.cutters.push_back(one);
  };
  cutter(CutterUse::pocket_clear, 3);
  cutter(CutterUse::piece, 0.8);
  cutter(CutterUse::piece, 0.6);
  board.cutters[1].runout = 0.02;
  EXPECT_DOUBLE_EQ(nest_rules(board).spacing(), 0.82 + 1);
  board.cutters[1].measured_cut = 0.85;
  EXPECT_DOUBLE_EQ(nest_rules(board).spacing(), 0.85 + 1);
}

TEST(Nesting, StopsWhenAsked) {
  Cancel cancel;
  cancel.request();
  EXPECT_FALSE(nest(many(1, 10), {sheet(120, 60)}, rules(), cancel));
}

TEST(Nesting, KeepsTheMarginAndTheClampsFree) {
  Sheet held = sheet(80, 60);
  held.margin = 4;
  held.clamp = 15;
  std::vector<InlayPiece> pieces;
  for (int i = 0; i < 12; ++i)
    pieces.push_back(piece("d" + std::to_string(i), {rectangle({100, 20}, {108, 26})}, "shell"));
  const Nesting nesting = nest(pieces, {held}, rules()).value();
  ASSERT_EQ(nesting.sheets.size(), 1U);
  EXPECT_TRUE(nesting.no_room.empty());
  for (const NestedPiece& nested : nesting.sheets[0].pieces) {
    const Box box = bounds(nested.outline[0]);
    EXPECT_TRUE(box.low.x >= 15 - 1e-9 && box.high.x <= 65 + 1e-9) << nested.name;
    EXPECT_TRUE(box.low.y >= 4 - 1e-9 && box.high.y <= 56 + 1e-9) << nested.name;
  }
  held.clamp = 38;  // 4 mm between the clamps: no piece of 8 x 6
  EXPECT_EQ(nest(pieces, {held}, rules()).value().no_room.size(), 12U);
}

}  // namespace
}  // namespace sagitta
