// Ovals against the ellipse's closed forms: area pi a b, perimeter 4 a E(e), radius b^2 / a at the ends of the longer
// axis (any handbook of mathematics), and for the curve at distance d outside A + P d + pi d^2 (Steiner).

#include "inlay/Oval.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "inlay/Inlays.hpp"
#include "polygon/Gap.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;

double whole_perimeter(double a, double b) { return 4 * a * std::comp_ellint_2(std::sqrt(1 - b * b / (a * a))); }

/// The ellipse's nearest point is where the way to it is square to it: found by looking along it, finer and finer.
double off_ellipse(Point p, double x, double y) {
  double t = 0, step = pi / 64, best = 1e300;
  const auto off = [&](double s) { return distance(p, {x * std::cos(s), y * std::sin(s)}); };
  for (int i = 0; i < 128; ++i)
    if (off(i * step) < best) best = off(i * step), t = i * step;
  for (; step > 1e-10; step /= 2)
    for (const double s : {t - step, t + step})
      if (off(s) < best) best = off(s), t = s;
  return best;
}

struct Sizes {
  double x, y;
};
constexpr Sizes sizes[] = {{10, 4}, {3, 11}, {6, 5.9}, {20, 2}, {5, 5}};

TEST(Oval, HasTheEllipsesAreaAndPerimeter) {
  for (const auto& [x, y] : sizes) {
    const double a = std::max(x, y), b = std::min(x, y), length = whole_perimeter(a, b);
    const Loop loop = Oval{x, y, 0}.outline(0, 1e-5);
    EXPECT_NEAR(area(loop), pi * a * b, 1e-5 * length) << x;
    EXPECT_NEAR(perimeter(loop), length, 1e-4) << x;
    for (const double d : {0.05, 1.0})
      EXPECT_NEAR(area(Oval{x, y, 0}.outline(d, 1e-5)), pi * a * b + length * d + pi * d * d, 1e-5 * (length + 7)) << x;
  }
}

TEST(Oval, RunsBesideTheEllipseAtOneDistance) {
  for (const auto& [x, y] : sizes)
    for (const double d : {0.05, 0.8})
      for (const CurveSegment& segment : Oval{x, y, 0}.outline(d, 0.0005))
        for (int i = 0; i < 8; ++i) EXPECT_NEAR(off_ellipse(segment.at(i / 8.0), x, y), d, 0.00055) << x << " " << y;
}

TEST(Oval, HasOneTangentAllRound) {
  for (const double cutter : {0.0, 1.0})
    for (const auto& [x, y] : sizes) {
      const Loop loop = Oval{x, y, cutter}.outline(0.05, 1e-5);
      for (std::size_t i = 0; i < loop.size(); ++i) {
        const CurveSegment &one = loop[i], &next = loop[(i + 1) % loop.size()];
        EXPECT_EQ(one.b, next.a);
        EXPECT_NEAR(cross(unit(one.slope(1)), unit(next.slope(0))), 0, 1e-7) << x << " " << y << " " << i;
        EXPECT_GT(one.sweep, 0);
      }
    }
}

// b^2 / a of 10 by 4 is 1.6.
TEST(Oval, IsWholeUpToItsRadiusAtTheEnds) {
  EXPECT_TRUE((Oval{10, 4, 1.6}).whole());
  EXPECT_TRUE((Oval{4, 10, 1.6}).whole());
  EXPECT_FALSE((Oval{10, 4, 1.6001}).whole());
  EXPECT_FALSE((Oval{10, 4, 4}).empty());
  EXPECT_TRUE((Oval{10, 4, 4.001}).empty());
  const Loop loop = Oval{10, 4, 0}.outline(0, 1e-6);
  EXPECT_NEAR(loop.front().radius, 1.6, 0.02);  // the first arc's, from the right end on
}

// A disc of radius 2 goes into 10 by 4 as far as sqrt((100 - 16)(1 - 4 / 16)) = sqrt 63 from its middle.
TEST(Oval, EndsAsTheCutterDoes) {
  const Oval oval{10, 4, 2};
  EXPECT_NEAR(oval.off_ends(), 10 - std::sqrt(63.0) - 2, 1e-12);
  const Loop loop = oval.outline(0, 1e-5);
  EXPECT_NEAR(reach({loop}, {1, 0}).high, std::sqrt(63.0) + 2, 1e-9);
  EXPECT_NEAR(reach({loop}, {0, 1}).high, 4, 1e-5);
  for (const CurveSegment& segment : loop) EXPECT_GE(segment.radius, 2 - 1e-3);
  EXPECT_LT(area(loop), pi * 40);
  const Loop disc = Oval{10, 4, 4}.outline(0, 1e-5);
  EXPECT_NEAR(area(disc), pi * 16, 1e-9);  // a disc as wide as the oval goes in at one place
}

Board board_with_oval(double along, double across, double turn) {
  Board board;
  board.scale.length = 648;
  board.scale.frets = 20;
  board.strings = {6, 37, 40, StringSpacing::equal_centres, {}, 1, {}};
  board.board.thickness = 6.35;
  board.board.nut_width = board.board.heel_width = 50;
  board.surface.radius_at_nut = 305;
  Inlay inlay;
  inlay.shape = InlayShape::oval;
  inlay.along = along, inlay.across = across, inlay.turn_degrees = turn;
  inlay.double_frets = {5};
  inlay.depth = 1.5;
  board.inlays = {inlay};
  return board;
}

Inlays fitted(const Board& board) {
  return std::get<Inlays>(fit_inlays(board, std::get<Layout>(lay_out(board)), Drawings{}));
}

TEST(Oval, IsAPieceInAPocketOfItsClearance) {
  const Inlays inlays = fitted(board_with_oval(8, 14, 0));
  ASSERT_EQ(inlays.pieces.size(), 2U);
  ASSERT_EQ(inlays.pockets.size(), 2U);
  for (const InlayPiece& piece : inlays.pieces) {
    EXPECT_NEAR(gap(piece.piece, piece.pocket).width, 0.05, 0.0006);
    ASSERT_TRUE(piece.ellipse);
    EXPECT_NEAR(length(piece.ellipse->major), 7, 1e-12);
    EXPECT_NEAR(piece.ellipse->major.x, 0, 1e-12);
    EXPECT_NEAR(piece.ellipse->ratio, 4.0 / 7, 1e-12);
    for (const CurveSegment& arc : piece.piece.front())
      EXPECT_NEAR(off_ellipse(arc.a - piece.ellipse->centre, 4, 7), 0, 1.1e-5);
  }
}

// A left-handed board turns the other way.
TEST(Oval, TurnsWithTheBoardsHand) {
  Board board = board_with_oval(14, 6, 30);
  EXPECT_NEAR(cross(fitted(board).pieces[0].ellipse->major, {std::cos(pi / 6), std::sin(pi / 6)}), 0, 1e-9);
  board.hand = Hand::left;
  EXPECT_NEAR(cross(fitted(board).pieces[0].ellipse->major, {std::cos(pi / 6), -std::sin(pi / 6)}), 0, 1e-9);
}

TEST(Oval, OfWhichTheCutterTakesTheEndsIsNoEllipse) {
  Board board = board_with_oval(20, 8, 0);
  Cutter cutter;
  cutter.name = "one", cutter.use = {CutterUse::pocket_detail}, cutter.diameter = 4;
  board.cutters = {cutter};
  const Inlays inlays = fitted(board);
  EXPECT_FALSE(inlays.pieces[0].ellipse);
  EXPECT_NEAR(inlays.pieces[0].departure, 10 - std::sqrt(63.0) - 2, 1e-12);
  board.cutters[0].diameter = 9;
  const Inlays none = fitted(board);
  EXPECT_TRUE(none.pieces.empty());
  ASSERT_EQ(none.pockets.size(), 2U);
  EXPECT_TRUE(none.pockets[0].shape && none.pockets[0].shape->empty());  // the plan refuses it
}

}  // namespace
}  // namespace sagitta
