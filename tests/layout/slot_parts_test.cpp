// Slots that the heel end cuts, on a board 56 wide whose frets stand at 200, 300, 350 and 375: ends by hand.

#include <gtest/gtest.h>

#include "layout/DrawnEnd.hpp"
#include "layout/SampleBoards.hpp"

namespace sagitta {
namespace {

using namespace samples;

Board cut_board(Heel heel, double past) {
  Board board = octaves();
  board.board.heel = heel;
  board.board.past_last_fret = past;
  board.board.ends_cut_slots = true;
  return board;
}

/// The end x = 365 + y.
Board cut_at_45() {
  Board board = cut_board(Heel::slant, -10);
  board.board.heel_angle = -45;
  return board;
}

Board cut_by_hollow(double radius, double past) {
  Board board = cut_board(Heel::hollow, past);
  board.board.heel_arc_radius = radius;
  return board;
}

FaultCode first_code(const Board& board) {
  const auto result = lay_out(board);
  const auto* faults = std::get_if<Faults>(&result);
  return faults && !faults->empty() ? faults->front().code : FaultCode::not_made;
}

void expect_slot(const Slot& slot, int fret, int part, Point bass, Point treble) {
  EXPECT_EQ(slot.fret, fret);
  EXPECT_EQ(slot.part, part);
  EXPECT_NEAR(distance(slot.bass_end, bass), 0, 1e-9);
  EXPECT_NEAR(distance(slot.treble_end, treble), 0, 1e-9);
}

TEST(SlotParts, ASlantedEndLeavesTheTrebleEndsOfSlots) {
  const std::vector<Slot> slots = sound(cut_at_45()).slots;
  ASSERT_EQ(slots.size(), 4u);
  expect_slot(slots[1], 2, 0, {300, -28}, {300, 28});
  EXPECT_FALSE(slots[1].bass_open || slots[1].treble_open);
  expect_slot(slots[2], 3, 0, {350, -15}, {350, 28});
  EXPECT_TRUE(slots[2].bass_open && !slots[2].treble_open);
  expect_slot(slots[3], 4, 0, {375, 10}, {375, 28});
}

TEST(SlotParts, AreMirroredWithTheHand) {
  Board board = cut_at_45();
  board.hand = Hand::left;
  const std::vector<Slot> slots = sound(board).slots;
  expect_slot(slots[3], 4, 0, {375, -10}, {375, -28});
  EXPECT_TRUE(slots[3].bass_open && !slots[3].treble_open);
}

TEST(SlotParts, AHollowEndLeavesTwoPartsOfASlot) {
  // Apex at 365, centre at 405: at x = 375 the circle of radius 40 is sqrt(1600 - 900) from the centre line.
  const std::vector<Slot> slots = sound(cut_by_hollow(40, -10)).slots;
  ASSERT_EQ(slots.size(), 5u);
  const double y = std::sqrt(700.0);
  expect_slot(slots[3], 4, 0, {375, -28}, {375, -y});
  expect_slot(slots[4], 4, 1, {375, y}, {375, 28});
  EXPECT_TRUE(!slots[3].bass_open && slots[3].treble_open && slots[4].bass_open && !slots[4].treble_open);
}

TEST(SlotParts, OfABlindSlotKeepTheirRoundEndsAtTheEdges) {
  Board board = cut_by_hollow(40, -5);
  board.slots.ends = SlotEnds::blind;
  board.slots.edge_left = 1.5;
  const std::vector<Slot> slots = sound(board).slots;
  ASSERT_EQ(slots.size(), 5u);
  const double y = std::sqrt(1600.0 - 1225);  // centre at 410
  expect_slot(slots[3], 4, 0, {375, -26.5}, {375, -y});
  expect_slot(slots[4], 4, 1, {375, y}, {375, 26.5});
}

TEST(SlotParts, AnEndWithinTheWoodLeftAtTheEdgeCutsNoBlindSlot) {
  // The end x = 402 - y leaves the treble edge at 374, so that it passes x = 375 at y = 27.
  Board board = cut_board(Heel::slant, 27);
  board.board.heel_angle = 45;
  board.slots.ends = SlotEnds::blind;
  board.slots.edge_left = 1.5;
  const std::vector<Slot> slots = sound(board).slots;
  ASSERT_EQ(slots.size(), 4u);
  expect_slot(slots[3], 4, 0, {375, -26.5}, {375, 26.5});
  EXPECT_FALSE(slots[3].treble_open);
  board.slots.ends = SlotEnds::through;
  expect_slot(sound(board).slots[3], 4, 0, {375, -28}, {375, 27});
}

TEST(SlotParts, NothingOrTooLittleLeftIsRefused) {
  // x = 365 + past + y: at the treble edge the end lies at 393 + past; slot 4 goes where that is under 375.
  Board board = cut_at_45();
  board.board.past_last_fret = -40;  // x = 335 + y: 363 at the edge
  EXPECT_EQ(first_code(board), FaultCode::slot_lost);
  board.board.past_last_fret = -27.1;  // 0.9 mm of slot 4 left, two widths are 1 mm
  EXPECT_EQ(first_code(board), FaultCode::slot_lost);
  board.board.past_last_fret = -26.9;
  EXPECT_EQ(sound(board).slots.size(), 4u);
}

TEST(SlotParts, AnEndAlongASlotIsRefused) {
  Board board = cut_board(Heel::slant, 0.1);
  board.board.heel_angle = 0;
  EXPECT_EQ(first_code(board), FaultCode::slot_at_end);
  board.board.past_last_fret = 0.2502;  // two tenths of a micrometre of wood beyond the slot
  EXPECT_EQ(sound(board).slots.size(), 4u);
}

TEST(SlotParts, ADrawnEndMayLeaveAPartOpenAtBothEnds) {
  // The end of tests/cases/families/f54-drawn: lines through (363, -40), (383, -10), (371, 10), (375, 40).
  const DrawnEnd end{{line({0, -40}, {20, -10}), line({20, -10}, {8, 10}), line({8, 10}, {12, 40})}};
  const Layout layout = std::get<Layout>(lay_out(cut_board(Heel::drawn, 2), end));
  ASSERT_EQ(layout.slots.size(), 4u);
  expect_slot(layout.slots[3], 4, 0, {375, -22}, {375, 10 - 4.0 / 12 * 20});
  EXPECT_TRUE(layout.slots[3].bass_open && layout.slots[3].treble_open);
}

TEST(SlotParts, AMarkerBeyondTheEndIsRefused) {
  Board board = cut_at_45();
  Inlay dot;
  dot.frets = {4};
  dot.depth = 1;
  board.inlays.push_back(dot);  // its middle at (362.5, 0), the end at 365
  EXPECT_EQ(sound(board).markers.size(), 1u);
  board.board.past_last_fret = -13;
  EXPECT_EQ(first_code(board), FaultCode::off_board);
}

}  // namespace
}  // namespace sagitta
