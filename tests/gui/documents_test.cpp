/// Opening, saving, recovering, comparing: asserted on the files.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "Places.hpp"
#include "app/Files.hpp"
#include "board/BoardFile.hpp"
#include "board/Writer.hpp"
#include "document/Beside.hpp"
#include "gui/Hand.hpp"
#include "input/Presets.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;
using viewer::Dialog;

TEST(Documents, SavingChangesOnlyTheValue) {
  Hand hand;
  const std::string before = text_of(hand.file());
  hand.open_group(3);
  hand.enter("Decisions/board.thickness", "6.25");
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL);
  const std::string after = text_of(hand.file());
  EXPECT_FALSE(hand.desk().document.dirty());
  std::size_t lines = 0;
  std::istringstream a(before), b(after);
  for (std::string x, y; std::getline(a, x);) {
    ASSERT_TRUE(std::getline(b, y));
    if (x == y) continue;
    ++lines;
    EXPECT_NE(y.find("6.25"), y.npos) << y;
  }
  EXPECT_EQ(lines, 1u);
  EXPECT_DOUBLE_EQ(read_board(hand.file().string()).board.board.thickness, 6.25);
}

TEST(Documents, OpenedByDialogEditedSavedReopened) {
  Hand hand;
  fs::copy_file(fs::path(places::source()) / "presets/reed-tenor.toml", hand.folder() / "reed.toml");
  hand.press(GLFW_KEY_O, GLFW_MOD_CONTROL);
  hand.frames(3);
  hand.click("Open a board/reed.toml");
  hand.click("Open a board/Open");
  hand.wait();
  ASSERT_EQ(hand.desk().document.title(), "reed.toml");
  hand.open_group(2);
  hand.enter("Decisions/strings.nut_spread", "29");
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL);
  hand.drop(hand.file());
  hand.wait();
  ASSERT_EQ(hand.desk().document.title(), "heron-six.toml");
  hand.drop(hand.folder() / "reed.toml");
  hand.wait();
  EXPECT_DOUBLE_EQ(hand.board().strings.nut_spread, 29);
  EXPECT_EQ(fs::path(hand.desk().settings.recent.front()).filename(), "reed.toml");
}

TEST(Documents, ClosingUnsavedAsks) {
  Hand hand;
  hand.open_group(3);
  hand.enter("Decisions/board.thickness", "6.25");
  hand.close();
  EXPECT_FALSE(hand.app().finished());
  ASSERT_EQ(hand.desk().view.dialog, Dialog::unsaved);
  hand.click("Unsaved changes/Keep working");
  EXPECT_FALSE(hand.app().finished());
  hand.close();
  hand.click("Unsaved changes/Save");
  EXPECT_TRUE(hand.app().finished());
  EXPECT_DOUBLE_EQ(read_board(hand.file().string()).board.board.thickness, 6.25);
}

TEST(Documents, ThrownAwayChangesStayOutOfTheFile) {
  Hand hand;
  const std::string before = text_of(hand.file());
  hand.open_group(3);
  hand.enter("Decisions/board.thickness", "6.25");
  hand.close();
  hand.click("Unsaved changes/Throw away");
  EXPECT_TRUE(hand.app().finished());
  EXPECT_EQ(text_of(hand.file()), before);
}

TEST(Documents, SavedAsAnotherFile) {
  Hand hand;
  hand.open_group(3);
  hand.enter("Decisions/board.thickness", "6.25");
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.frames(3);
  hand.click("Save the board as/name");
  hand.press(GLFW_KEY_A, GLFW_MOD_CONTROL);
  hand.type("second");
  hand.click("Save the board as/Save");
  EXPECT_EQ(hand.desk().document.path(), hand.folder() / "second.toml");
  EXPECT_DOUBLE_EQ(read_board((hand.folder() / "second.toml").string()).board.board.thickness, 6.25);
  EXPECT_NE(read_board(hand.file().string()).board.board.thickness, 6.25);
}

TEST(Documents, WhatABoardNamesIsTakenAlongWhenItIsSavedElsewhere) {
  Hand hand;
  write(hand.folder() / "neck.step", "a neck");
  write(hand.folder() / "with-neck.toml", text_of(hand.file()) + "\n[neck]\nfile = \"neck.step\"\n");
  hand.drop(hand.folder() / "with-neck.toml");
  hand.wait();
  fs::create_directory(hand.folder() / "other");
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.frames(3);
  hand.click("Save the board as/name");
  hand.press(GLFW_KEY_A, GLFW_MOD_CONTROL);
  hand.type("other/moved");
  hand.click("Save the board as/Save");
  EXPECT_EQ(text_of(hand.folder() / "other/neck.step"), "a neck");
  EXPECT_EQ(fs::path(hand.board().folder), hand.folder() / "other");
  EXPECT_FALSE(hand.desk().document.dirty());
}

TEST(Documents, ABoardOnABaseIsWrittenWholeWhereItsBaseIsNot) {
  Hand hand;
  write(hand.folder() / "child.toml", "format = 1\nbase = \"heron-six.toml\"\n[slots]\nwidth = 0.6\n");
  hand.drop(hand.folder() / "child.toml");
  hand.wait();
  ASSERT_DOUBLE_EQ(hand.board().slots.width, 0.6);
  Board wanted = hand.board();
  fs::create_directory(hand.folder() / "other");
  ASSERT_TRUE(viewer::save_board_as(hand.desk(), hand.folder() / "other/child.toml"));
  const BoardFile back = read_board((hand.folder() / "other/child.toml").string());
  ASSERT_TRUE(back.sound());
  wanted.folder = back.board.folder, wanted.base.clear();
  EXPECT_EQ(back.board, wanted);
}

TEST(Documents, APresetFindsItsDrawings) {
  Hand hand;
  for (const Preset& preset : presets()) {
    ASSERT_TRUE(viewer::open_preset(hand.desk(), std::string(preset.name))) << preset.name;
    for (const PresetDrawing& drawing : preset.drawings)
      EXPECT_EQ(text_of(fs::path(hand.board().folder) / drawing.file), drawing.text) << drawing.file;
  }
  const Preset made{"waves", "# waves\n", {{"wave.svg", "<svg/>"}}};
  ASSERT_EQ(viewer::lay_out_drawings(made, hand.folder() / "waves"), "");
  EXPECT_EQ(text_of(hand.folder() / "waves/wave.svg"), "<svg/>");
}

TEST(Documents, RevertCanBeUndone) {
  Hand hand;
  const Board first = hand.board();
  hand.open_group(3);
  hand.enter("Decisions/board.thickness", "6.25");
  const Board edited = hand.board();
  hand.press(GLFW_KEY_R, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  EXPECT_EQ(hand.board(), first);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_EQ(hand.board(), edited);
}

TEST(Documents, AFileWithProblemsLeavesTheBoard) {
  Hand hand;
  const Board before = hand.board();
  write(hand.folder() / "bad.toml", "format = 1\n[scale]\nlenght = 648\nfrets = 22\n");
  hand.drop(hand.folder() / "bad.toml");
  EXPECT_EQ(hand.board(), before);
  ASSERT_FALSE(hand.desk().versions.unopened.problems.empty());
  EXPECT_NE(hand.text("Checks/problem 1").find("bad.toml"), std::string::npos);
}

TEST(Documents, ANewBoardFromAPreset) {
  Hand hand;
  hand.press(GLFW_KEY_N, GLFW_MOD_CONTROL);
  hand.frames(3);
  hand.click("New board/reed-tenor");
  hand.wait();
  Board wanted = read_board((fs::path(places::source()) / "presets/reed-tenor.toml").string()).board;
  wanted.folder = hand.board().folder;
  EXPECT_EQ(hand.board(), wanted);
  EXPECT_TRUE(hand.desk().document.path().empty());
}

TEST(Documents, ComparedWithTheSavedBoard) {
  Hand hand;
  const auto plain = hand.picture();
  hand.open_group(3);
  hand.enter("Decisions/board.past_last_fret", "22");
  hand.press(GLFW_KEY_D, GLFW_MOD_CONTROL);
  hand.wait();
  hand.until([&] { return hand.desk().results.comparison->model != nullptr; });
  EXPECT_THAT(hand.text("Checks/difference board.past_last_fret"), testing::HasSubstr("22 mm"));
  const auto compared = hand.picture();
  hand.click("Checks/Stop comparing");
  const auto alone = hand.picture();
  EXPECT_GT(Hand::changed(compared, alone), 0.0005);
  EXPECT_FALSE(hand.desk().results.comparison.has_value());
}

TEST(Documents, ComparedWithASecondBoard) {
  Hand hand;
  Board other = hand.board();
  other.slots.width = 0.6, other.limits["thin-edge"] = 3, other.materials["ebony"].density = 1100;
  other.board.past_last_fret = 22;
  write(hand.folder() / "other.toml", write_board(other));
  const auto alone = hand.picture();
  hand.press(GLFW_KEY_D, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.frames(3);
  hand.click("Compare with a board/other.toml");
  hand.click("Compare with a board/Compare");
  hand.until([&] { return hand.desk().results.comparison && hand.desk().results.comparison->model; });
  EXPECT_THAT(hand.text("Checks/difference slots.width"), testing::HasSubstr("0.6 mm \u2192 0.584 mm"));
  EXPECT_THAT(hand.text("Checks/difference limits.thin-edge"), testing::HasSubstr("3 \u2192 not given"));
  EXPECT_THAT(hand.text("Checks/difference materials.ebony"), testing::HasSubstr("1100 kg/m\u00b3 \u2192 not given"));
  EXPECT_GT(Hand::changed(alone, hand.picture()), 0.0005);  // the other heel end stands out beyond this one's
  hand.click("Checks/difference slots.width");
  hand.wait();
  EXPECT_TRUE(hand.see("Decisions/slots.width").in_view);
}

TEST(Documents, ExportGoesOnBehindTheWindowAndItsBarStopsIt) {
  Hand hand;
  hand.press(GLFW_KEY_E, GLFW_MOD_CONTROL);
  hand.frames(3);
  hand.click("Export/Export");
  hand.press(GLFW_KEY_ESCAPE);
  EXPECT_THAT(hand.text("Status/work"), testing::StartsWith("Exporting: "));
  hand.click("Status/Stop");
  hand.until([&] { return !hand.desk().sending.state().running; }, 60);
  EXPECT_FALSE(fs::exists(hand.folder() / "heron-six-export"));
}

TEST(Documents, ARecoveryCopyIsThereWithinTwoSeconds) {
  Hand hand;
  hand.open_group(3);
  hand.enter("Decisions/board.thickness", "6.25");
  const fs::path copy = viewer::Recovery(hand.folder() / "state").copy_path();
  hand.until([&] { return fs::exists(copy); }, 2);
  EXPECT_DOUBLE_EQ(read_board(copy.string()).board.board.thickness, 6.25);
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL);
  hand.frames(3);
  EXPECT_FALSE(fs::exists(copy));
}

TEST(Documents, BrokenSettingsAreSetAside) {
  Folder folder;
  write(folder.path / "viewer.json", "{ \"text_size\": ");
  const auto loaded = viewer::load_settings(folder.path);
  EXPECT_EQ(loaded.settings, viewer::Settings());
  EXPECT_NE(loaded.message.find("viewer.json.broken"), std::string::npos);
  EXPECT_TRUE(fs::exists(folder.path / "viewer.json.broken"));
  EXPECT_FALSE(fs::exists(folder.path / "viewer.json"));
}

TEST(Documents, SettingsComeBack) {
  Folder folder;
  viewer::Settings settings;
  settings.text_size = 1.5, settings.dark = true, settings.recent = {"/a/b.toml"};
  ASSERT_EQ(viewer::save_settings(folder.path, settings), "");
  EXPECT_EQ(viewer::load_settings(folder.path).settings, settings);
}

TEST(Documents, ExportWritesTheFolder) {
  Hand hand;
  hand.press(GLFW_KEY_E, GLFW_MOD_CONTROL);
  hand.frames(3);
  hand.click("Export/SVG: the same outlines in true size");  // not wanted
  hand.click("Export/Export");
  hand.until([&] { return !hand.desk().sending.state().running; }, 240);
  hand.frames(2);
  EXPECT_NE(hand.text("Export/outcome").find("heron-six-export"), std::string::npos);
  std::set<std::string> kinds;
  for (const auto& entry : fs::recursive_directory_iterator(hand.folder() / "heron-six-export"))
    if (entry.is_regular_file()) kinds.insert(entry.path().extension());
  EXPECT_EQ(kinds, (std::set<std::string>{".3mf", ".csv", ".dxf", ".html", ".json", ".pdf", ".png", ".step", ".stl"}));
  hand.click("Export/Copy the folder's path");
  EXPECT_EQ(std::string(ImGui::GetClipboardText()), (hand.folder() / "heron-six-export").string());
  for (const char* file : {"manifest.json", "board.step", "board.stl", "slotted.step", "blank.stl"})
    EXPECT_TRUE(fs::exists(hand.folder() / "heron-six-export" / file)) << file;
}

TEST(Documents, ACancelledExportLeavesNothing) {
  Hand hand;
  hand.press(GLFW_KEY_E, GLFW_MOD_CONTROL);
  hand.frames(3);
  hand.click("Export/Export");
  ASSERT_TRUE(hand.desk().sending.state().running);
  hand.click("Export/Stop");
  hand.until([&] { return !hand.desk().sending.state().running; }, 60);
  hand.frames(2);
  EXPECT_NE(hand.text("Export/outcome").find("Stopped"), std::string::npos);
  EXPECT_FALSE(fs::exists(hand.folder() / "heron-six-export"));
}

TEST(Documents, ANewBoardStartsFromPicturesOfTheLastBoardsAndThePresets) {
  Hand hand;
  hand.press(GLFW_KEY_N, GLFW_MOD_CONTROL);
  hand.frames(3);
  for (const Preset& preset : presets()) {
    const std::string name(preset.name);
    ASSERT_TRUE(hand.sees("New board/" + name)) << name;
  }
  const viewer::StartForm& form = hand.desk().forms.start;
  EXPECT_GE(form.presets.size(), 20u);
  for (const viewer::StartCard& card : form.presets) EXPECT_TRUE(card.layout) << card.title;
  // The figures are the board's: heron-six has 6 strings, 648 mm, 22 frets, 254 to 406 mm.
  const std::string words = hand.text("New board/heron-six");
  for (const char* figure : {"6", "648 mm", "22", "254", "406 mm"}) EXPECT_NE(words.find(figure), words.npos) << figure;
  ASSERT_EQ(form.last.size(), 1u);
  hand.click("New board/" + hand.file().string());
  hand.wait();
  EXPECT_EQ(hand.desk().document.path(), hand.file());
  EXPECT_EQ(hand.desk().view.dialog, viewer::Dialog::none);
}

}  // namespace
}  // namespace sagitta::test
