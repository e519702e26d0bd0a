// Places that are lines, or not cut: slots, depths and ends.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "layout/SampleBoards.hpp"

namespace sagitta {
namespace {

using namespace samples;
using testing::ElementsAre;
using testing::IsEmpty;

TEST(Lines, HaveSlotsOfTheirOwnDepth) {
  Board board = octaves();
  board.slots.cut = SlotCut::lines;
  EXPECT_EQ(sound(board).slots.size(), 4u);
  EXPECT_EQ(slot_depth(board), 2);
  board.slots.depth.reset();
  EXPECT_EQ(slot_depth(board), 1.5);
  board.slots.cut.reset();
  EXPECT_EQ(slot_depth(board), 1.7 + 0.35);
}

TEST(Lines, GoIntoTheirSlots) {
  Board board = octaves();
  board.slots.cut = SlotCut::lines;
  board.slots.line_thickness = 0.5;
  EXPECT_THAT(fault_keys(board), IsEmpty());
  board.slots.line_thickness = 0.51;
  EXPECT_THAT(fault_keys(board), ElementsAre("slots.line_thickness"));
}

TEST(Uncut, PlacesStayAndMeetNothing) {
  Board board = octaves();
  const Layout cut = sound(board);
  board.slots.cut = SlotCut::none;
  const Layout uncut = sound(board);
  EXPECT_TRUE(uncut.slots.empty());
  EXPECT_EQ(uncut.frets, cut.frets);
  EXPECT_EQ(uncut.outline, cut.outline);
  board.board.past_last_fret = 0;
  board.slots.width = 5;
  EXPECT_EQ(sound(board).heel_end, 375);
}

TEST(Fretless, BoardRunsFromTheNutLine) {
  Board board = octaves();
  board.scale.cents.clear();
  board.scale.frets = 0;
  board.board.past_last_fret = 300;
  const Layout layout = sound(board);
  EXPECT_EQ(layout.heel_end, 300);
  EXPECT_EQ(layout.frets.size(), 1u);
  EXPECT_TRUE(layout.slots.empty());
  EXPECT_DOUBLE_EQ(area(layout.outline), 308 * 56);
}

TEST(Fretless, BoardHasNoFretToStandAt) {
  Board board = octaves();
  board.scale.cents.clear();
  board.scale.frets = 0;
  board.surface.heel_at = HeelAt::last_fret;
  board.board.heel = Heel::fret;
  board.scale.zero_fret = true;
  EXPECT_THAT(fault_keys(board), ElementsAre("scale.zero_fret", "board.heel", "surface.heel_at"));
}

}  // namespace
}  // namespace sagitta
