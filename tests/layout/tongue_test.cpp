// A tongue on a board 56 wide whose strings stand at y = -25, -8 1/3, 8 1/3 and 25, frets in octaves of 400: by hand.

#include <gtest/gtest.h>

#include "layout/SampleBoards.hpp"

namespace sagitta {
namespace {

using namespace samples;
constexpr double pi = std::numbers::pi;

/// Three frets (the last at 350) and one more at 375 for the two treble strings.
Board tongued() {
  Board board = octaves();
  board.scale.frets = 3;
  board.board.past_last_fret = 6;
  board.tongue = Tongue{1, 2, 3.0, 6.0, 0};
  return board;
}

FaultCode first_code(const Board& board) {
  const auto result = lay_out(board);
  const auto* faults = std::get_if<Faults>(&result);
  return faults && !faults->empty() ? faults->front().code : FaultCode::not_made;
}

constexpr double side = 25.0 / 3 - 3;  ///< y of the tongue's bass side

TEST(Tongue, IsARectangleBesideTheHeelEnd) {
  const Layout layout = sound(tongued());
  ASSERT_EQ(layout.outline.size(), 6u);
  EXPECT_NEAR(area(layout.outline), 364 * 56 + 25 * (28 - side), 1e-9);
  EXPECT_NEAR(distance(layout.tongue->bass_side.a, {356, side}), 0, 1e-12);
  EXPECT_NEAR(distance(layout.tongue->bass_side.b, {381, side}), 0, 1e-12);
  EXPECT_NEAR(layout.heel_end, 356, 1e-12);
  EXPECT_NEAR(layout.edges[0].b.x, 356, 1e-12);
  EXPECT_NEAR(layout.edges[1].b.x, 381, 1e-12);
}

TEST(Tongue, HasFretsThatGoOnAfterTheBoards) {
  const Layout layout = sound(tongued());
  ASSERT_EQ(layout.frets.size(), 5u);
  EXPECT_TRUE(layout.frets[4].on_tongue && !layout.frets[3].on_tongue);
  EXPECT_NEAR(distance(layout.frets[4].bass, {375, side}), 0, 1e-12);
  EXPECT_NEAR(distance(layout.frets[4].treble, {375, 25}), 0, 1e-12);
  ASSERT_EQ(layout.slots.size(), 4u);
  EXPECT_TRUE(layout.slots[3].on_tongue);
  EXPECT_NEAR(distance(layout.slots[3].bass_end, {375, side}), 0, 1e-12);
  EXPECT_NEAR(distance(layout.slots[3].treble_end, {375, 28}), 0, 1e-12);
}

TEST(Tongue, EndsHalfASpaceAfterItsLastFretWhenNothingElseIsSaid) {
  Board board = tongued();
  board.tongue->past_last_fret.reset();
  board.scale.cents.push_back(6000);  // fret 5 at 387.5
  EXPECT_NEAR(sound(board).edges[1].b.x, 375 + 6.25, 1e-12);
  board.scale.cents.clear();
  board.scale.frets = 22;
  const double last = 400 * (1 - std::exp2(-23.0 / 12)), next = 400 * (1 - std::exp2(-24.0 / 12));
  EXPECT_NEAR(sound(board).edges[1].b.x, (last + next) / 2, 1e-12);
}

TEST(Tongue, HasTheTrebleEdgesMarginWhenNothingElseIsSaid) {
  Board board = tongued();
  board.tongue->margin.reset();
  board.board.edge_margin.reset();
  board.board.nut_width = 54;   // 2 beside the treble string at x = 0
  board.board.heel_width = 58;  // 4 at the heel end, x = 356
  const LineSegment bass = sound(board).tongue->bass_side;
  EXPECT_NEAR(bass.a.y, 25.0 / 3 - 4, 1e-12);
  EXPECT_NEAR(bass.b.y, 25.0 / 3 - 2 - 2 * 381 / 356.0, 1e-12);
}

TEST(Tongue, StandsBesideASlantedEnd) {
  Board board = tongued();
  board.board.heel = Heel::slant;
  board.board.heel_angle = 10;
  const Layout layout = sound(board);
  const double tangent = std::tan(10 * pi / 180);
  EXPECT_NEAR(distance(layout.tongue->bass_side.a, {356 - side * tangent, side}), 0, 1e-12);
  // Left of the heel line, from the bass edge to the tongue's side, and the tongue's strip.
  const double beside = (28 + side) * (364 + (28 - side) / 2 * tangent), strip = (28 - side) * 389;
  EXPECT_NEAR(area(layout.outline), beside + strip, 1e-9);
}

TEST(Tongue, RoundsItsOwnCornersAndTheBoardOnlyTheBassOne) {
  Board board = tongued();
  board.board.corner_radius = 4;
  board.tongue->corner_radius = 3;
  const double corner = 1 - pi / 4;
  EXPECT_NEAR(area(sound(board).outline), 364 * 56 + 25 * (28 - side) - corner * (16 + 2 * 9), 1e-9);
  board.tongue->corner_radius = 12;  // two of them are wider than the tongue
  EXPECT_EQ(first_code(board), FaultCode::corner_too_large);
}

TEST(Tongue, IsMirroredWithTheHand) {
  Board board = tongued();
  board.hand = Hand::left;
  const Layout layout = sound(board);
  EXPECT_NEAR(area(layout.outline), 364 * 56 + 25 * (28 - side), 1e-9);
  EXPECT_NEAR(distance(layout.slots[3].bass_end, {375, -side}), 0, 1e-12);
  EXPECT_NEAR(distance(layout.slots[3].treble_end, {375, -28}), 0, 1e-12);
}

TEST(Tongue, HasMarkersOnItsOwnMiddleLine) {
  Board board = tongued();
  Inlay dot, pair;
  dot.frets = {4};
  pair.double_frets = {4};
  dot.depth = pair.depth = 1;
  dot.diameter = pair.diameter = 2;
  board.inlays = {dot, pair};
  const std::vector<Marker> markers = sound(board).markers;
  ASSERT_EQ(markers.size(), 3u);
  const double middle = (side + 28) / 2, width = 28 - side;
  EXPECT_NEAR(distance(markers[0].centre, {362.5, middle}), 0, 1e-12);
  EXPECT_NEAR(distance(markers[1].centre, {362.5, middle - width / 4}), 0, 1e-12);
  EXPECT_NEAR(distance(markers[2].centre, {362.5, middle + width / 4}), 0, 1e-12);
}

TEST(Tongue, HasNoSideDotsInTheBassEdge) {
  Board board = tongued();
  board.side_dots = SideDots{{3}, {}};
  EXPECT_EQ(sound(board).side_dots.size(), 1u);
  board.side_dots->frets = {4};
  EXPECT_EQ(first_code(board), FaultCode::off_board);
}

TEST(Tongue, WhoseSlotsWouldRunIntoTheBoardIsRefused) {
  Board board = tongued();
  board.board.past_last_fret = 24.8;  // the heel end at 374.8, the slot from 374.75 on
  EXPECT_EQ(first_code(board), FaultCode::tongue_meets_board);
  board.board.past_last_fret = 24.7;
  EXPECT_EQ(sound(board).slots.size(), 4u);
  board.board.past_last_fret = 40;  // beyond the tongue's end
  EXPECT_EQ(first_code(board), FaultCode::tongue_meets_board);
}

TEST(Tongue, WhoseOwnEndMeetsASlotIsRefused) {
  Board board = tongued();
  board.tongue->past_last_fret = 0.25;
  EXPECT_EQ(first_code(board), FaultCode::slot_at_end);
  board.tongue->past_last_fret = 0.26;
  EXPECT_EQ(sound(board).slots.size(), 4u);
}

TEST(Tongue, NeedsStringsThatTheBoardHasAndLessThanAll) {
  Board board = tongued();
  board.tongue->strings = 5;
  EXPECT_EQ(first_code(board), FaultCode::wrong_count);
  board.tongue->strings = 4;  // its side would be the bass edge
  EXPECT_EQ(first_code(board), FaultCode::tongue_meets_board);
}

TEST(Tongue, StandsBesideStraightEndsOnly) {
  Board board = tongued();
  for (const Heel heel : {Heel::arc, Heel::hollow, Heel::drawn}) {
    board.board.heel = heel;
    board.board.heel_arc_radius = 100;
    EXPECT_EQ(first_code(board), FaultCode::not_allowed);
  }
}

TEST(Tongue, NeedsCentsForItsOwnFrets) {
  Board board = tongued();
  board.scale.cents.resize(3);
  EXPECT_EQ(first_code(board), FaultCode::wrong_count);
}

}  // namespace
}  // namespace sagitta
