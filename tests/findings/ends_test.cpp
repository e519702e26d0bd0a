// Slots that a heel end parts, and those of a tongue: lists and findings against lengths by hand, on a flat board 56
// wide with frets at 200, 300, 350 and 375.

#include "GoodBoard.hpp"
#include "frets/SlotCheck.hpp"
#include "frets/WireList.hpp"

namespace sagitta::test {
namespace {

Board flat_board() {
  Board board;
  board.scale.length = 400;
  board.scale.frets = 4;
  board.scale.cents = {1200, 2400, 3600, 4800};
  board.strings = {4, 50, 50, StringSpacing::equal_centres, {}, 1, {}};
  board.board.thickness = 6.5;
  board.board.edge_margin = 3;
  board.board.past_last_fret = 9;
  board.surface.profile = Profile::flat;
  board.slots.width = 0.5;
  board.slots.depth = 2;
  return board;
}

/// Apex at 365, centre at 405: at x = 375 the circle of radius 40 is sqrt(700) from the centre line.
Board hollow_board() {
  Board board = flat_board();
  board.board.heel = Heel::hollow;
  board.board.heel_arc_radius = 40;
  board.board.past_last_fret = -10;
  board.board.ends_cut_slots = true;
  return board;
}

Board tongue_board() {
  Board board = flat_board();
  board.scale.frets = 3;
  board.board.past_last_fret = 6;
  board.tongue = Tongue{1, 2, 3.0, 6.0, 0};
  return board;
}

const double left = 28 - std::sqrt(700.0);

TEST(PartedSlots, HaveALineEachInTheWireList) {
  const std::vector<WirePiece> wire = wire_list(prepared(hollow_board()));
  ASSERT_EQ(wire.size(), 5u);
  EXPECT_FALSE(wire[2].part);
  EXPECT_NEAR(wire[2].straight, 56, 1e-9);
  for (const std::size_t i : {3u, 4u}) {
    EXPECT_EQ(wire[i].fret, 4);
    EXPECT_EQ(wire[i].part, static_cast<int>(i) - 3);
    EXPECT_NEAR(wire[i].straight, left, 1e-9);
    EXPECT_NEAR(wire[i].cut, left + 2 * 2, 1e-9);
    EXPECT_NEAR(wire[i].tang, left, 1e-9);
  }
}

TEST(PartedSlots, NipTheTangOnlyAtTheEdge) {
  Board board = hollow_board();
  board.binding = Binding{1.0, 0, {}, {}};
  const std::vector<WirePiece> wire = wire_list(prepared(board));
  EXPECT_NEAR(wire[3].nip_bass, 1, 1e-9);
  EXPECT_EQ(wire[3].nip_treble, 0);
  EXPECT_EQ(wire[4].nip_bass, 0);
  EXPECT_NEAR(wire[4].nip_treble, 1, 1e-9);
}

TEST(PartedSlots, AreOneSlotToMeasure) {
  Board board = hollow_board();
  board.measured.slots = {200, 300, 350, 375.05};
  const PreparedBoard ready = prepared(board);
  EXPECT_EQ(slots_to_measure(ready.layout()), 4);
  const std::vector<SlotError> errors = slot_errors(board.measured.slots, ready.layout());
  ASSERT_EQ(errors.size(), 4u);
  EXPECT_NEAR(errors[3].off, 0.05, 1e-12);
  EXPECT_FALSE(found(board, "measured-slots-differ"));
  board.measured.slots.push_back(390);
  EXPECT_TRUE(found(board, "measured-slots-differ"));
}

TEST(PartedSlots, LeaveTheWoodBehindTheLastWholeSlotToBeMeasured) {
  // Slot 3 ends at 350.25, the apex stands at 365.
  EXPECT_NEAR(measured(hollow_board(), "wood-behind-last-slot"), 14.75, 1e-9);
}

TEST(PartedSlots, AreAsFarFromTheSlotBeforeAsItsWholeLine) {
  Board board = hollow_board();
  board.wire.crown_width = 2;
  EXPECT_NEAR(measured(board, "narrow-fret-space"), 25 - 2, 1e-9);
}

TEST(TongueSlots, HaveTheTonguesLengthInTheWireList) {
  const std::vector<WirePiece> wire = wire_list(prepared(tongue_board()));
  ASSERT_EQ(wire.size(), 4u);
  EXPECT_NEAR(wire[3].straight, 28 - (25.0 / 3 - 3), 1e-9);
}

TEST(TongueSlots, HaveTheirOwnWoodBehindTheLast) {
  // 6 behind each last slot's middle; the tongue's made shorter is what counts.
  EXPECT_NEAR(measured(tongue_board(), "wood-behind-last-slot"), 5.75, 1e-9);
  Board board = tongue_board();
  board.tongue->past_last_fret = 0.4;
  EXPECT_NEAR(measured(board, "wood-behind-last-slot"), 0.15, 1e-9);
  EXPECT_TRUE(found(board, "wood-behind-last-slot"));
  board.tongue->past_last_fret = 0.6;
  EXPECT_FALSE(found(board, "wood-behind-last-slot"));
}

}  // namespace
}  // namespace sagitta::test
