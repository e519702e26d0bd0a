// Lines in place of wire: their strips by hand arithmetic, and no finding that belongs to wire.

#include <regex>

#include "findings/GoodBoard.hpp"
#include "frets/LineList.hpp"

namespace sagitta::test {
namespace {

Board lined_board() {
  Board board = good_board();
  board.slots.cut = SlotCut::lines;
  board.slots.line_material = "maple";
  board.slots.line_thickness = 0.55;
  return board;
}

/// 55.56 wide, radius 304.8: the edge lies 304.8 - sqrt(304.8^2 - 27.78^2) = 1.2685987 under the middle.
constexpr double drop = 1.2685987, rounded = 1e-7;

TEST(Lines, AreAsLongAsTheBoardIsWide) {
  const auto list = line_list(prepared(lined_board()));
  ASSERT_EQ(list.size(), 22u);
  EXPECT_EQ(list[4].fret, 5);
  EXPECT_EQ(list[4].material, "maple");
  EXPECT_EQ(list[4].thickness, 0.55);
  EXPECT_NEAR(list[4].length, 55.56, 1e-9);
  EXPECT_NEAR(list[4].height, 1.95 + drop, rounded);  // the slot's floor follows the surface
  EXPECT_NEAR(total_line(list), 22 * 55.56, 1e-8);
}

TEST(Lines, EndAtTheBindingAndAtTheTipsOfBlindSlots) {
  Board board = lined_board();
  board.binding = Binding{1.5, 0, {}, {}};
  EXPECT_NEAR(line_list(prepared(board))[0].length, 52.56, 1e-9);
  board = lined_board();
  board.slots.ends = SlotEnds::blind;
  board.slots.edge_left = 2;
  EXPECT_NEAR(line_list(prepared(board))[0].length, 51.56, 1e-9);
}

TEST(Lines, InALevelSlotReachItsFloor) {
  Board board = lined_board();
  board.slots.floor = SlotFloor::level;
  board.slots.depth = 3;
  EXPECT_NEAR(line_list(prepared(board))[0].height, 3, 1e-9);
}

TEST(Lines, AreNoneWithoutLines) {
  EXPECT_TRUE(line_list(prepared(good_board())).empty());
  Board board = good_board();
  board.slots.cut = SlotCut::none;
  EXPECT_TRUE(line_list(prepared(board)).empty());
}

/// Each of these is found on the board with wire.
TEST(Lines, HaveNoFindingThatBelongsToWire) {
  const auto both = [](const char* name, void (*spoil)(Board&)) {
    Board wired = good_board();
    spoil(wired);
    EXPECT_TRUE(found(wired, name)) << name;
    for (const SlotCut cut : {SlotCut::lines, SlotCut::none}) {
      Board other = wired;
      other.slots.cut = cut;
      EXPECT_FALSE(found(other, name)) << name;
    }
  };
  both("slot-too-tight", [](Board& b) { b.slots.width = 0.5; });
  both("slot-too-loose", [](Board& b) { b.slots.width = 0.8; });
  both("slot-too-shallow", [](Board& b) { b.slots.depth = 1.5; });
  both("tang-nipped", [](Board& b) { b.binding = Binding{1.5, 0, {}, {}}; });
  both("crowns-meet", [](Board& b) { b.wire.crown_width = 12; });
  both("narrow-fret-space", [](Board& b) { b.wire.crown_width = 8; });
}

/// Without a crown the plane at the saddle is the surface's.
TEST(Lines, SetTheSaddleByTheSurface) {
  EXPECT_NEAR(measured(good_board(), "saddle-height"), 6.35 + 1.2, 1e-9);
  EXPECT_NEAR(measured(lined_board(), "saddle-height"), 6.35, 1e-9);
}

/// The last number that a finding tells. From the 22nd fret to the saddle there are 647.7 x 2^(-22/12) = 181.745 mm; a
/// degree of neck angle raises its end by 181.745 x tan 1 deg = 3.172 mm. By hand.
TEST(SaddleHeight, TellsWhatADegreeOfNeckAngleDoes) {
  const auto all = findings(good_board());
  const auto one = std::find_if(all.begin(), all.end(), [](const Finding& f) { return f.name == "saddle-height"; });
  ASSERT_NE(one, all.end());
  double last = 0;
  const std::regex number("[0-9]+\\.[0-9]+");
  for (std::sregex_iterator it(one->message.begin(), one->message.end(), number), end; it != end; ++it)
    last = std::stod(it->str());
  EXPECT_NEAR(last, 3.172, 0.006);
}

/// Without frets a string is stopped up to the heel end: under the outer strings a cylinder is not straight. The outer
/// string runs dy = (saddle - nut) / 2 x 475.95 / 647.7 across a radius of 100; it hangs over the arc by dy^2 / 8R and
/// 4th powers: 0.036 mm of 0.05 that are allowed from 36 to 50, 0.073 from 36 to 56.
TEST(Fretless, SurfaceIsJudgedUpToTheHeelEnd) {
  Board board = good_board();
  board.inlays.clear();
  board.scale.frets = 0;
  board.board.past_last_fret = 475.95;  // as with 22 frets
  board.strings.nut_spread = 36;
  board.surface.radius_at_nut = 100;
  board.strings.saddle_spread = 50;
  EXPECT_FALSE(found(board, "hump-under-string"));
  board.strings.saddle_spread = 56;
  EXPECT_TRUE(found(board, "hump-under-string"));
}

}  // namespace
}  // namespace sagitta::test
