/// The shop's drawers: kept for all boards in the user's own folder, chosen into the decisions, with what was measured.

#include "document/Drawers.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "board/BoardFile.hpp"
#include "gui/Change.hpp"
#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;
using viewer::Drawer;

fs::path drawer(Hand& hand, const std::string& table) { return hand.folder() / "config/drawers" / table; }

/// Opens the drawer of a row and keeps it under a name.
void remember(Hand& hand, const std::string& menu, const std::string& name) {
  hand.click("Decisions/" + menu);
  hand.frames(3);
  hand.click("Decisions/drawer name");
  hand.press(GLFW_KEY_A, GLFW_MOD_CONTROL);
  hand.type(name);
  hand.click("Decisions/Remember this one");
  hand.frames(3);
}

TEST(Drawers, WireIsRememberedFromOneBoardAndTakenIntoAnother) {
  Hand hand;
  change(hand, [](Board& b) { b.wire.tang_depth = 1.55, b.wire.barb_width = 0.83, b.wire.crown_height = 1.14; });
  const Wire wire = hand.board().wire;
  hand.open_group(5);
  remember(hand, "drawer of wire0", "Reed wire, low");
  hand.press(GLFW_KEY_ESCAPE);
  ASSERT_EQ(std::distance(fs::directory_iterator(drawer(hand, "wire")), fs::directory_iterator()), 1);
  // What is in the folder is a part of a board file: the reader of board files has the same wire.
  const BoardFile kept = read_board(fs::directory_iterator(drawer(hand, "wire"))->path().string());
  EXPECT_EQ(kept.board.name, "Reed wire, low");
  EXPECT_EQ(kept.board.wire, wire);
  for (int i = 0; i < 2; ++i) hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  ASSERT_NE(hand.board().wire, wire);
  hand.click("Decisions/drawer of wire0");
  hand.frames(3);
  hand.click("Decisions/drawer Reed wire, low");
  hand.frames(3);
  EXPECT_EQ(hand.board().wire, wire);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_NE(hand.board().wire, wire) << "one step of undo";
}

TEST(Drawers, AMeasuredCutStaysWithItsCutter) {
  Hand hand;
  Cutter cutter;
  cutter.name = "one millimetre, second box", cutter.use = {CutterUse::pocket_detail}, cutter.diameter = 1;
  cutter.cutting_length = 4, cutter.measured_cut = 1.036, cutter.runout = 0.01;
  change(hand, [&](Board& b) { b.cutters = {cutter}; });
  hand.open_group(8);
  hand.click("Decisions/drawer of cutters0");
  hand.frames(3);
  EXPECT_EQ(hand.text("Decisions/drawer name"), cutter.name) << "its own name is offered";
  hand.click("Decisions/Remember this one");
  hand.press(GLFW_KEY_ESCAPE);
  change(hand, [](Board& b) { b.cutters.clear(); });
  hand.click("Decisions/drawer of cutters0");
  hand.frames(3);
  hand.click("Decisions/drawer " + cutter.name);
  hand.frames(3);
  ASSERT_EQ(hand.board().cutters.size(), 1u);
  EXPECT_EQ(hand.board().cutters[0], cutter);
}

// A clearance that was found to be right for a material is that of every inlay made of it from then on.
TEST(Drawers, ASettledClearanceStaysWithItsMaterial) {
  Hand hand;
  change(hand, [](Board& b) {
    b.materials["reed bone"] = {1900, "#e8dcc0", MaterialKind::bone, {}, {}, {}};
    for (Inlay& inlay : b.inlays) inlay.material = "reed bone", inlay.clearance = 0.035;
  });
  viewer::Drawers drawers(hand.folder() / "own");
  ASSERT_EQ(drawers.keep(Drawer::materials, "reed bone", hand.board(), 0), "");
  viewer::Drawers others(hand.folder() / "own");
  ASSERT_EQ(others.items(Drawer::materials).size(), 1u);
  Board other;
  other.inlays.resize(2);
  other.inlays[0].material = "reed bone", other.inlays[1].material = "shell";
  const double before = other.inlays[1].clearance;
  other = viewer::with_item(other, Drawer::materials, others.items(Drawer::materials)[0], 0);
  EXPECT_EQ(other.materials.at("reed bone"), hand.board().materials.at("reed bone"));
  EXPECT_EQ(other.inlays[0].clearance, 0.035);
  EXPECT_EQ(other.inlays[1].clearance, before);
}

TEST(Drawers, AStringSetFitsOnlyAsManyStrings) {
  Hand hand;
  change(hand, [](Board& b) { b.strings.gauges = {1.17, 0.91, 0.66, 0.43, 0.33, 0.25}; });
  hand.open_group(2);
  remember(hand, "drawer of strings0", "six, light");
  hand.press(GLFW_KEY_ESCAPE);
  const viewer::DrawerItem kept = hand.desk().forms.drawer.drawers.items(Drawer::strings).at(0);
  Board seven = hand.board();
  seven.strings.count = 7;
  EXPECT_FALSE(viewer::fits(seven, Drawer::strings, kept));
  EXPECT_EQ(viewer::with_item(Board(), Drawer::strings, kept, 0).strings.gauges, hand.board().strings.gauges);
}

TEST(Drawers, WhatCannotBeReadIsSaidAndTheRestIsThere) {
  Hand hand;
  const fs::path folder = hand.folder() / "own";
  viewer::Drawers drawers(folder);
  Board board;
  board.sheets.resize(1);
  board.sheets[0] = {"shell",         60,  30,           1.2, Pattern::none, SheetZero::corner, 6, 15,
                     SheetHold::tape, 0.3, SheetFace::up};
  ASSERT_EQ(drawers.keep(Drawer::sheets, "box at the window; 60 x 30", board, 0), "");
  write(folder / "sheets/torn.toml", "[[sheets]]\nmaterial = ");
  write(folder / "sheets/strange.toml", "[[sheets]]\nmaterial = \"shell\"\nlenght = 3\n");
  write(folder / "sheets/empty.toml", "name = \"nothing\"\n");
  drawers.look_again();
  ASSERT_EQ(drawers.items(Drawer::sheets).size(), 1u);
  EXPECT_EQ(drawers.items(Drawer::sheets)[0].board.sheets, board.sheets);
  EXPECT_EQ(drawers.troubles(Drawer::sheets).size(), 3u);
  EXPECT_EQ(drawers.forget(Drawer::sheets, "box at the window; 60 x 30"), "");
  EXPECT_TRUE(drawers.items(Drawer::sheets).empty());
}

// Two names that differ only in signs that no file name should have do not share a file.
TEST(Drawers, NamesAreKeptApart) {
  Hand hand;
  viewer::Drawers drawers(hand.folder() / "own");
  const Board board;
  for (const char* name : {"a/b", "a_b", "a b", "../a", "\u00fc", "A"})
    ASSERT_EQ(drawers.keep(Drawer::wire, name, board, 0), "") << name;
  EXPECT_EQ(drawers.items(Drawer::wire).size(), 6u);
  EXPECT_EQ(std::distance(fs::directory_iterator(hand.folder() / "own/wire"), fs::directory_iterator()), 6);
  ASSERT_EQ(drawers.keep(Drawer::wire, "A", board, 0), "");
  EXPECT_EQ(drawers.items(Drawer::wire).size(), 6u) << "the same name is the same thing";
}

}  // namespace
}  // namespace sagitta::test
