// Edges of their own: margins that differ, a width at a fret. Places by hand arithmetic.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "layout/SampleBoards.hpp"
#include "layout/Taper.hpp"

namespace sagitta {
namespace {

using namespace samples;
using testing::ElementsAre;

/// Spread 50 at the nut and 60 at the saddle, 400 on: the outer strings lie 25 + x / 80 from y = 0.
Board tapered() {
  Board board = octaves();
  board.strings.saddle_spread = 60;
  return board;
}

Board with_margins(LengthPair margin) {
  Board board = tapered();
  board.board.edge_margin = margin;
  return board;
}

TEST(Edges, EachHasItsMarginBesideItsOwnString) {
  const Layout layout = sound(with_margins({3, 4.5}));
  for (const double x : {-8.0, 0.0, 200.0, 384.0}) {
    EXPECT_NEAR(layout.edge(0, x), 28 + x / 80, 1e-12);
    EXPECT_NEAR(layout.edge(1, x), 29.5 + x / 80, 1e-12);
    EXPECT_NEAR(2 * layout.half_width(x), 57.5 + x / 40, 1e-12);
  }
  // A trapezoid: 392 long, its mean width at x = 188.
  EXPECT_NEAR(area(layout.outline), 392 * (57.5 + 188.0 / 40), 1e-9);
  EXPECT_NEAR(layout.edges[0].a.y, -27.9, 1e-12);
  EXPECT_NEAR(layout.edges[1].b.y, 29.5 + 4.8, 1e-12);
}

TEST(Edges, RunStraightBetweenMarginsAtNutAndHeelEnd) {
  Board board = tapered();
  board.board.edge_margin.reset();
  board.board.nut_margin = LengthPair(3, 4);
  board.board.heel_margin = LengthPair(5, 2);
  const Layout layout = sound(board);
  const double heel_string = 25 + 384.0 / 80;
  EXPECT_NEAR(layout.edge(0, 0), 28, 1e-12);
  EXPECT_NEAR(layout.edge(1, 0), 29, 1e-12);
  EXPECT_NEAR(layout.edge(0, 384), heel_string + 5, 1e-12);
  EXPECT_NEAR(layout.edge(1, 384), heel_string + 2, 1e-12);
  EXPECT_NEAR(layout.edge(0, 192), (28 + heel_string + 5) / 2, 1e-12);
}

TEST(Edges, StayWithTheirStringsOnALeftHandedBoard) {
  Board board = with_margins({3, 4.5});
  board.hand = Hand::left;
  const Layout layout = sound(board);
  EXPECT_NEAR(layout.edge(0, 100), 29.5 + 1.25, 1e-12);  // the treble edge, at negative y
  EXPECT_NEAR(layout.edge(1, 100), 28 + 1.25, 1e-12);
  EXPECT_NEAR(layout.outline.front().a.y, -29.4, 1e-12);
}

TEST(Edges, SlotsAndPairsReachAndStandAboutTheStringsMiddle) {
  Board board = with_margins({3, 4.5});
  Inlay dot;
  dot.double_frets = {2};
  dot.depth = 2;
  board.inlays = {dot};
  const Layout layout = sound(board);
  const Slot& slot = layout.slots[1];  // fret 2, at x = 300
  EXPECT_NEAR(slot.bass_end.y, -(28 + 3.75), 1e-12);
  EXPECT_NEAR(slot.treble_end.y, 29.5 + 3.75, 1e-12);
  const double quarter = (57.5 + 250.0 / 40) / 4;  // space 2 has its middle at x = 250
  EXPECT_NEAR(layout.markers[0].centre.y, -quarter, 1e-12);
  EXPECT_NEAR(layout.markers[1].centre.y, quarter, 1e-12);
}

TEST(Edges, OfAnArcEndAtDifferentPlaces) {
  for (const Heel heel : {Heel::arc, Heel::hollow}) {
    Board board = with_margins({3, 4.5});
    board.board.heel = heel;
    board.board.heel_arc_radius = 60;
    board.board.past_last_fret = 25;
    const Layout layout = sound(board);
    const double centre = heel == Heel::arc ? 340 : 460;  // the apex at x = 400
    ASSERT_EQ(layout.outline.size(), 4u);
    EXPECT_NEAR(layout.outline[1].centre.x, centre, 1e-12);
    EXPECT_EQ(layout.outline[1].centre.y, 0);
    for (const int side : {0, 1}) {
      const Point end = layout.edges[side].b;
      EXPECT_NEAR(distance(end, {centre, 0}), 60, 1e-12);
      EXPECT_NEAR(std::abs(end.y), layout.edge(side, end.x), 1e-12);
    }
    EXPECT_GT(std::abs(layout.edges[0].b.x - layout.edges[1].b.x), 0.5);
  }
}

TEST(Edges, RoundedCornersTouchBothLines) {
  for (const Heel heel : {Heel::square, Heel::arc, Heel::hollow}) {
    Board board = with_margins({3, 4.5});
    board.board.heel = heel;
    if (heel != Heel::square) board.board.heel_arc_radius = 80;
    board.board.past_last_fret = 25;
    board.board.corner_radius = 6;
    const Loop outline = sound(board).outline;
    ASSERT_EQ(outline.size(), 6u);
    for (std::size_t i = 0; i < 4; ++i) {
      EXPECT_EQ(outline[i].b, outline[i + 1].a);
      EXPECT_NEAR(cross(unit(outline[i].slope(1)), unit(outline[i + 1].slope(0))), 0, 1e-12);
    }
    EXPECT_EQ(outline[1].radius, 6);
    EXPECT_EQ(outline[3].radius, 6);
  }
}

/// Fret 2 of the octaves lies at x = 300.
TEST(WidthAtFret, IsTheWidthThere) {
  Board board = octaves();
  board.board.edge_margin.reset();
  board.board.nut_width = 56;
  board.board.width_at_fret = {2, 62};
  const Layout layout = sound(board);
  EXPECT_NEAR(2 * layout.half_width(0), 56, 1e-12);
  EXPECT_NEAR(2 * layout.half_width(300), 62, 1e-12);
  EXPECT_NEAR(2 * layout.half_width(384), 56 + 6.0 * 384 / 300, 1e-12);
  EXPECT_TRUE(taper_in(layout).symmetric());
}

TEST(WidthAtFret, OfAFanIsMeasuredWhereTheSlotCrossesTheCentreLine) {
  Board board = fan();
  board.board.edge_margin.reset();
  board.board.nut_width = 55;
  board.board.width_at_fret = {12, 62};
  const Layout layout = sound(board);
  EXPECT_NEAR(2 * layout.half_width(layout.frets[12].middle.x), 62, 1e-12);
}

TEST(WidthAtFret, NamesAFretOfTheBoard) {
  Board board = octaves();
  board.board.edge_margin.reset();
  board.board.nut_width = 56;
  board.board.width_at_fret = {5, 62};
  EXPECT_THAT(fault_keys(board), ElementsAre("board.width_at_fret"));
}

/// 56 at the nut and 52 at fret 2 leave 56 - 4 * 384 / 300 = 50.88 at the heel end; 51.3 at fret 2 leaves 49.98, and
/// the strings are 50 apart.
TEST(WidthAtFret, LeavesRoomForTheStringsAtTheHeelEnd) {
  Board board = octaves();
  board.board.edge_margin.reset();
  board.board.nut_width = 56;
  board.board.width_at_fret = {2, 52};
  EXPECT_TRUE(fault_keys(board).empty());
  board.board.width_at_fret = {2, 51.3};
  EXPECT_THAT(fault_keys(board), ElementsAre("board.width_at_fret"));
}

}  // namespace
}  // namespace sagitta
