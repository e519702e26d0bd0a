// Slanted and drawn heel ends on a board 56 wide whose frets stand at 200, 300, 350 and 375: areas and places by hand.

#include <gtest/gtest.h>

#include "layout/DrawnEnd.hpp"
#include "layout/SampleBoards.hpp"

namespace sagitta {
namespace {

using namespace samples;
constexpr double pi = std::numbers::pi;

Board slanted(double degrees, double past) {
  Board board = octaves();
  board.board.heel = Heel::slant;
  board.board.heel_angle = degrees;
  board.board.past_last_fret = past;
  return board;
}

Board drawn_board(double past) {
  Board board = octaves();
  board.board.heel = Heel::drawn;
  board.board.past_last_fret = past;
  return board;
}

FaultCode first_code(const std::variant<Layout, Faults>& result) {
  const auto* faults = std::get_if<Faults>(&result);
  return faults && !faults->empty() ? faults->front().code : FaultCode::not_made;
}

TEST(SlantedHeel, IsTheLineThroughTheHeelEndTurned) {
  // x = 405 - y tan 20: the treble edge is shorter by 56 tan 20, the area that of the rectangle.
  const Layout layout = sound(slanted(20, 30));
  const double tangent = std::tan(20 * pi / 180);
  EXPECT_NEAR(layout.edges[0].b.x, 405 + 28 * tangent, 1e-12);
  EXPECT_NEAR(layout.edges[1].b.x, 405 - 28 * tangent, 1e-12);
  EXPECT_NEAR(area(layout.outline), 413 * 56, 1e-9);
}

TEST(SlantedHeel, OfZeroDegreesIsSquare) { EXPECT_EQ(sound(slanted(0, 9)).outline, sound(octaves()).outline); }

TEST(SlantedHeel, IsMirroredWithTheHand) {
  Board board = slanted(20, 30);
  board.hand = Hand::left;
  const Layout layout = sound(board);
  const double tangent = std::tan(20 * pi / 180);
  EXPECT_NEAR(layout.edges[0].b.x, 405 - 28 * tangent, 1e-12);  // at negative y: the treble edge
  EXPECT_NEAR(layout.edges[1].b.x, 405 + 28 * tangent, 1e-12);
}

TEST(SlantedHeel, RoundsItsCorners) {
  // Between lines that meet at the angle f, a corner of radius r takes r^2 (cot(f/2) - (pi - f) / 2).
  Board board = slanted(20, 40);
  board.board.corner_radius = 5;
  const auto taken = [](double f) { return 25 * (1 / std::tan(f / 2) - (pi - f) / 2); };
  const double sharp = 70 * pi / 180, blunt = 110 * pi / 180;
  EXPECT_NEAR(area(sound(board).outline), 423 * 56 - taken(sharp) - taken(blunt), 1e-9);
}

TEST(SlantedHeel, ThatMeetsASlotIsRefused) {
  // At the treble edge the end of 45 degrees lies 28 nearer to the nut: 375.25 + 28 = 403.25 clears slot 4.
  EXPECT_EQ(first_code(lay_out(slanted(45, 28.2))), FaultCode::slot_at_end);
  EXPECT_TRUE(std::holds_alternative<Layout>(lay_out(slanted(45, 28.6))));
}

TEST(DrawnHeel, LiesWithItsHeightsMiddleOnTheCentreLineAndCrossesItAtTheHeelEnd) {
  // Drawn 80 high from y = 100 to 180, so that y falls by 140; the line crosses y = 0 where the drawing has x = 14.
  const DrawnEnd end{{line({0, 100}, {20, 130}), line({20, 130}, {8, 150}), line({8, 150}, {12, 180})}};
  const Layout layout = std::get<Layout>(lay_out(drawn_board(40), end));
  // 415 - 14 = 401 is what x grows by: corners at (421, -10) and (409, 10).
  ASSERT_EQ(layout.outline.size(), 6u);
  EXPECT_NEAR(distance(layout.outline[1].b, {421, -10}), 0, 1e-12);
  EXPECT_NEAR(distance(layout.outline[2].b, {409, 10}), 0, 1e-12);
  EXPECT_NEAR(distance(layout.edges[0].b, {401 + 12.0 / 30 * 20, -28}), 0, 1e-12);
  EXPECT_NEAR(distance(layout.edges[1].b, {409 + 18.0 / 30 * 4, 28}), 0, 1e-12);
}

TEST(DrawnHeel, MayBeDrawnFromEitherEnd) {
  const DrawnEnd up{{line({0, -40}, {5, 40})}}, down{{line({5, 40}, {0, -40})}};
  EXPECT_EQ(std::get<Layout>(lay_out(drawn_board(40), up)).outline,
            std::get<Layout>(lay_out(drawn_board(40), down)).outline);
}

TEST(DrawnHeel, OfAnArcTakesItsSegmentOffTheBoard) {
  // A hollow arc of radius 50 through its apex at 415: a drawn one and heel = "hollow" are one board.
  Board hollow = drawn_board(40);
  hollow.board.heel = Heel::hollow;
  hollow.board.heel_arc_radius = 50;
  const double half = std::asin(40.0 / 50);
  const DrawnEnd end{{arc({50, 0}, 50, pi + half, -2 * half)}};
  EXPECT_NEAR(area(std::get<Layout>(lay_out(drawn_board(40), end)).outline), area(sound(hollow).outline), 1e-9);
}

TEST(DrawnHeel, ThatDoesNotCrossTheBoardAsItMustIsRefused) {
  const auto code = [](const Loop& chain) { return first_code(lay_out(drawn_board(40), DrawnEnd{chain})); };
  EXPECT_EQ(code({}), FaultCode::end_not_crossing);
  EXPECT_EQ(code({line({0, -27}, {0, 27})}), FaultCode::end_not_crossing);  // ends inside the edges
  EXPECT_EQ(code({line({0, -40}, {9, 20}), line({9, 20}, {9, -20}), line({9, -20}, {0, 40})}),
            FaultCode::end_not_crossing);  // crosses y = 0 three times
  EXPECT_EQ(code({line({0, -40}, {0, 20}), line({0, 20}, {9, 15}), line({9, 15}, {9, 40})}),
            FaultCode::end_not_crossing);  // a face that looks at the nut
  EXPECT_EQ(code({line({0, -40}, {0, 5}), line({0, 5}, {-430, 20}), line({-430, 20}, {0, 40})}),
            FaultCode::heel_meets_nut);
  EXPECT_EQ(first_code(lay_out(drawn_board(40))), FaultCode::end_not_crossing);  // no drawing
}

TEST(DrawnHeel, ThatMeetsASlotIsRefusedWhereverTheSlotLies) {
  // A notch whose tip lies on the centre line at 375 + 9, its flanks 20 further on.
  const DrawnEnd notch{{line({20, -40}, {0, 0}), line({0, 0}, {20, 40})}};
  EXPECT_TRUE(std::holds_alternative<Layout>(lay_out(drawn_board(9), notch)));
  EXPECT_TRUE(std::holds_alternative<Layout>(lay_out(drawn_board(0.26), notch)));
  EXPECT_EQ(first_code(lay_out(drawn_board(0.2), notch)), FaultCode::slot_at_end);
  // A tongue of wood between two flanks that reach back over the slot.
  const DrawnEnd flanks{{line({0, -40}, {20, 0}), line({20, 0}, {0, 40})}};
  EXPECT_EQ(first_code(lay_out(drawn_board(9), flanks)), FaultCode::slot_at_end);
}

}  // namespace
}  // namespace sagitta
