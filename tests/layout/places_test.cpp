// Slots, nut, markers, side dots, pins and blank stand where the board-file reference says.

#include <gtest/gtest.h>

#include "layout/SampleBoards.hpp"
#include "layout/SlotLines.hpp"

namespace sagitta {
namespace {

using namespace samples;

double distance_to_line(Point p, Point a, Point b) { return std::abs(cross(unit(b - a), p - a)); }

TEST(Slots, WidthIsSquareToTheSlot) {
  const Layout layout = sound(steep_fan());
  for (const Slot& slot : layout.slots) {
    const RoundedPolygon strip = slot_shape(layout, slot);
    ASSERT_EQ(strip.core.size(), 4u);
    for (Point p : strip.core) {
      EXPECT_NEAR(distance_to_line(p, slot.bass_end, slot.treble_end), 0.3, 1e-12);
      EXPECT_NEAR(std::abs(p.y), layout.half_width(p.x), 1e-12);
    }
    EXPECT_GT(area(outline(strip)), 0);
  }
}

TEST(Slots, BlindTipsLieInsideTheEdges) {
  Board board = steep_fan();
  board.slots.ends = SlotEnds::blind;
  board.slots.edge_left = 1.75;
  const Layout layout = sound(board);
  for (std::size_t i = 0; i < layout.slots.size(); ++i) {
    const Slot& slot = layout.slots[i];
    const FretLine& fret = layout.frets[i + 1];
    EXPECT_TRUE(slot.blind);
    EXPECT_NEAR(distance(slot.bass_end, fret.bass_edge), 1.75, 1e-12);
    EXPECT_NEAR(distance(slot.treble_end, fret.treble_edge), 1.75, 1e-12);
    EXPECT_NEAR(distance_to_line(slot.bass_end, fret.bass, fret.treble), 0, 1e-12);
    const RoundedPolygon shape = slot_shape(layout, slot);
    EXPECT_EQ(shape.radius, 0.3);
    const Point along = unit(slot.treble_end - slot.bass_end);
    EXPECT_NEAR(support(shape, along), dot(along, slot.treble_end), 1e-12);
  }
}

TEST(Slots, LeftHandedShapesAreTheMirror) {
  Board board = steep_fan();
  const Layout right = sound(board);
  board.hand = Hand::left;
  const Layout left = sound(board);
  for (std::size_t i = 0; i < left.slots.size(); ++i) {
    const Loop a = outline(slot_shape(left, left.slots[i])), b = outline(slot_shape(right, right.slots[i]));
    EXPECT_NEAR(area(a), area(b), 1e-10);
    EXPECT_NEAR(bounds(a).low.y, -bounds(b).high.y, 1e-12);
  }
}

TEST(NutSeat, SlotLiesAlongTheNutLineItsWidthAlongTheCentreLine) {
  const Layout layout = sound(steep_fan());
  ASSERT_TRUE(layout.nut);
  EXPECT_EQ(layout.nut->face, (Point{0, 0}));
  EXPECT_EQ(layout.nut->back, (Point{-4, 0}));
  EXPECT_NEAR(cross(layout.nut->direction, unit(layout.frets[0].treble - layout.frets[0].bass)), 0, 1e-15);
  EXPECT_FALSE(layout.nut->shelf);
  EXPECT_EQ(layout.nut->depth, 2.5);
}

TEST(NutSeat, CompensationMovesTheFaceOnly) {
  Board board = octaves();
  board.nut.seat = NutSeat::shelf;
  const Layout plain_ = sound(board);
  board.nut.compensation = 0.6;
  const Layout moved_ = sound(board);
  EXPECT_EQ(moved_.nut->face, (Point{0.6, 0}));
  EXPECT_TRUE(moved_.nut->shelf);
  EXPECT_EQ(moved_.frets, plain_.frets);
  EXPECT_EQ(moved_.outline, plain_.outline);
}

TEST(NutSeat, StandsBehindAZeroFret) {
  Board board = octaves();
  board.scale.zero_fret = true;
  board.nut.seat = NutSeat::slot;
  board.nut.width = 4;
  board.nut.distance = 0.25;
  board.board.behind_nut = 4.25;
  const Layout layout = sound(board);
  EXPECT_EQ(layout.nut->face, (Point{-0.25, 0}));
  EXPECT_EQ(layout.nut->back, (Point{-4.25, 0}));
  EXPECT_EQ(layout.nut_end, -4.25);
}

TEST(NutSeat, SlotToTheBoardsEndIsAllowed) {
  Board board = octaves();
  board.nut.seat = NutSeat::slot;
  board.nut.width = 8;
  EXPECT_EQ(sound(board).nut->back.x, -8);
}

TEST(Markers, StandMidwayBetweenSlots) {
  Board board = octaves();
  Inlay dot;
  dot.depth = 2;
  dot.frets = {1, 4};
  dot.double_frets = {3};
  dot.shift_along = 25;
  dot.shift_across = -1.5;
  board.inlays = {dot};
  Layout layout = sound(board);
  ASSERT_EQ(layout.markers.size(), 4u);
  EXPECT_EQ(layout.markers[0], (Marker{0, 1, {125, -1.5}}));
  EXPECT_EQ(layout.markers[1], (Marker{0, 4, {387.5, -1.5}}));
  EXPECT_EQ(layout.markers[2], (Marker{0, 3, {350, -1.5 - 14}}));  // half of 56 mm from one to the other
  EXPECT_EQ(layout.markers[3], (Marker{0, 3, {350, -1.5 + 14}, 1}));
  board.inlays[0].spread = 10;
  layout = sound(board);
  EXPECT_EQ(layout.markers[3].centre, (Point{350, 3.5}));
}

TEST(Markers, OnAFanStandOnTheCentreLine) {
  Board board = steep_fan();
  Inlay dot;
  dot.depth = 2;
  dot.frets = {5};
  board.inlays = {dot};
  const Layout layout = sound(board);
  EXPECT_NEAR(layout.markers[0].centre.x, (layout.frets[4].middle.x + layout.frets[5].middle.x) / 2, 1e-13);
  EXPECT_EQ(layout.markers[0].centre.y, 0);
}

TEST(SideDots, StandSquareInTheBassEdge) {
  Board board = steep_fan();
  board.side_dots = SideDots{};
  board.side_dots->frets = {3};
  board.side_dots->double_frets = {12};
  const Layout layout = sound(board);
  ASSERT_EQ(layout.side_dots.size(), 3u);
  const Point along = unit(layout.edges[0].b - layout.edges[0].a);
  for (const SideDot& dot_ : layout.side_dots) {
    EXPECT_NEAR(distance_to_line(dot_.mouth, layout.edges[0].a, layout.edges[0].b), 0, 1e-12);
    EXPECT_NEAR(dot(dot_.inward, along), 0, 1e-15);
    EXPECT_NEAR(length(dot_.inward), 1, 1e-15);
    EXPECT_GT(dot_.inward.y, 0);
    EXPECT_EQ(dot_.radius, 1);
  }
  const Point three = layout.side_dots[0].mouth;
  EXPECT_NEAR(distance(three, layout.frets[2].bass_edge), distance(three, layout.frets[3].bass_edge), 1e-12);
  const Point pair = layout.side_dots[2].mouth - layout.side_dots[1].mouth;
  EXPECT_NEAR(length(pair), 4, 1e-13);
  EXPECT_NEAR(cross(pair, along), 0, 1e-13);
  const Point twelve = between(layout.side_dots[1].mouth, layout.side_dots[2].mouth, 0.5);
  EXPECT_NEAR(distance(twelve, layout.frets[11].bass_edge), distance(twelve, layout.frets[12].bass_edge), 1e-12);
}

TEST(Blank, DefaultsLeaveSpareWood) {
  Board board = octaves();
  board.sanding = 0.1;
  const Layout layout = sound(board);
  EXPECT_EQ(layout.blank.low, (Point{-38, -40}));
  EXPECT_EQ(layout.blank.high, (Point{414, 40}));
  EXPECT_DOUBLE_EQ(layout.blank_thickness, 7.4);
  EXPECT_EQ(layout.strip.low, (Point{-11, -31}));
  EXPECT_EQ(layout.strip.high, (Point{387, 31}));
}

TEST(Blank, MeasuredBlankHoldsTheBoardWhereItIsPut) {
  Board board = octaves();
  board.blank.length = 500;
  board.blank.width = 70;
  board.blank.thickness = 9;
  Layout layout = sound(board);
  EXPECT_EQ(layout.blank.low, (Point{-62, -35}));
  EXPECT_EQ(layout.blank_thickness, 9);
  for (Hand hand : {Hand::right, Hand::left}) {
    board.hand = hand;
    board.blank.at = {{20, 33}};
    layout = sound(board);
    EXPECT_EQ(layout.blank.low, (Point{-20, -33}));
    EXPECT_EQ(layout.blank.high, (Point{480, 37}));
  }
}

TEST(Fall, SlopeReachesTheFallAtTheHeelEnd) {
  Board board = octaves();
  board.surface.fall_from_fret = 2;
  board.surface.fall = 0.5;
  const Layout layout = sound(board);
  EXPECT_EQ(layout.fall_start, 300);
  EXPECT_DOUBLE_EQ(layout.fall_slope * 84, 0.5);
}

TEST(Defaults, AreResolvedFromOtherKeys) {
  Board board;
  EXPECT_DOUBLE_EQ(slot_depth(board), 1.7 + 0.35);
  board.slots.depth = 1.2;
  EXPECT_EQ(slot_depth(board), 1.2);
  EXPECT_EQ(behind_nut(board), 0);
  board.nut.seat = NutSeat::slot;
  EXPECT_DOUBLE_EQ(behind_nut(board), 6.2);
  board.board.behind_nut = 4;
  EXPECT_EQ(behind_nut(board), 4);
}

TEST(Defaults, CornersComeFromTheCuttersThatMakeThem) {
  const auto cutter = [](CutterUse use, double diameter) {
    Cutter made;
    made.use = {use};
    made.diameter = diameter;
    return made;
  };
  Board board;
  EXPECT_EQ(inlay_cutter_radius(board), 0);
  board.cutters = {cutter(CutterUse::pocket_clear, 3)};
  EXPECT_EQ(inlay_cutter_radius(board), 1.5);
  board.cutters.push_back(cutter(CutterUse::pocket_detail, 0.8));
  EXPECT_EQ(inlay_cutter_radius(board), 0.4);
  board.cutters[1].runout = 0.02;
  EXPECT_DOUBLE_EQ(inlay_cutter_radius(board), 0.41);
  board.cutters[1].measured_cut = 0.85;
  EXPECT_DOUBLE_EQ(inlay_cutter_radius(board), 0.425);
  board.cutters.push_back(cutter(CutterUse::piece, 1));
  EXPECT_EQ(inlay_cutter_radius(board), 0.5);
}

TEST(SideDots, LieInTheEdgesNamed) {
  Board board = octaves();
  board.side_dots.emplace();
  board.side_dots->frets = {2};
  board.side_dots->edge = DotEdge::treble;
  const Layout treble = sound(board);
  ASSERT_EQ(treble.side_dots.size(), 1U);
  EXPECT_EQ(treble.side_dots[0].side, 1);
  EXPECT_EQ(treble.side_dots[0].mouth, (Point{250, 28}));  // midway between 200 and 300, on the edge
  EXPECT_EQ(treble.side_dots[0].inward, (Point{0, -1}));
  board.side_dots->edge = DotEdge::both;
  const Layout both = sound(board);
  ASSERT_EQ(both.side_dots.size(), 2U);
  EXPECT_EQ(both.side_dots[0].mouth, (Point{250, -28}));
  EXPECT_EQ(both.side_dots[1].mouth, (Point{250, 28}));
  EXPECT_NE(id_of(both.side_dots[0]), id_of(both.side_dots[1]));
  board.hand = Hand::left;
  const Layout left = sound(board);
  EXPECT_EQ(left.side_dots[1].side, 1);
  EXPECT_EQ(left.side_dots[1].mouth, (Point{250, -28}));
}

// The board is 56 wide: holes 27.9 deep from both edges leave 0.2 between them, of 28.1 they meet.
TEST(SideDots, OfBothEdgesDoNotMeet) {
  Board board = octaves();
  board.side_dots.emplace();
  board.side_dots->frets = {2};
  board.side_dots->edge = DotEdge::both;
  board.side_dots->depth = 27.9;
  EXPECT_EQ(fault_keys(board), std::vector<std::string>{});
  board.side_dots->depth = 28.1;
  EXPECT_EQ(fault_keys(board), std::vector<std::string>{"side_dots.depth"});
}

}  // namespace
}  // namespace sagitta
