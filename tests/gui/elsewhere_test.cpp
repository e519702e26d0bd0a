/// The board's file in the hands of somebody else: an editor, a second window, an owner who made it read-only. Asserted
/// on the files.

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include "app/Files.hpp"
#include "board/BoardFile.hpp"
#include "document/Recovery.hpp"
#include "document/Settings.hpp"
#include "folder/Digest.hpp"
#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;
using viewer::Dialog;

const std::string page = "The file was changed elsewhere/";

/// Heron-six, 6.25 mm thick here and not saved; its file then gets slots of 0.6 mm and a comment from an editor.
struct TwoHands : Hand {
  TwoHands() {
    open_group(3);
    enter("Decisions/board.thickness", "6.25");
    theirs = text_of(file());
    const std::string width = "width = 0.584";
    theirs.replace(theirs.find(width), width.size(), "width = 0.6");
    theirs += "# wider wire, says the workshop\n";
  }
  void they_write() { write(file(), theirs); }
  void save() {
    press(GLFW_KEY_S, GLFW_MOD_CONTROL);
    frames(3);
  }
  std::string theirs;
};

double thickness_in(const fs::path& path) { return read_board(path.string()).board.board.thickness; }

TEST(Elsewhere, WhatAnEditorWroteIsShownAndNotOverwritten) {
  TwoHands hand;
  hand.they_write();
  hand.save();
  EXPECT_EQ(text_of(hand.file()), hand.theirs);
  ASSERT_EQ(hand.desk().view.dialog, Dialog::elsewhere);
  EXPECT_TRUE(hand.sees(page + "difference slots.width"));
  EXPECT_TRUE(hand.sees(page + "difference board.thickness"));
  EXPECT_FALSE(hand.sees(page + "difference board.nut_width"));
  EXPECT_TRUE(hand.desk().document.dirty());
}

TEST(Elsewhere, BothAreKeptUnderTwoNames) {
  TwoHands hand;
  write(hand.folder() / "heron-six-mine.toml", "taken");
  hand.they_write();
  hand.save();
  hand.click(page + "Keep both");
  EXPECT_EQ(text_of(hand.file()), hand.theirs);
  EXPECT_EQ(text_of(hand.folder() / "heron-six-mine.toml"), "taken");
  EXPECT_DOUBLE_EQ(thickness_in(hand.folder() / "heron-six-mine-2.toml"), 6.25);
  EXPECT_EQ(hand.desk().document.path(), hand.folder() / "heron-six-mine-2.toml");
  EXPECT_FALSE(hand.desk().document.dirty());
}

TEST(Elsewhere, TheirsIsTakenAndUndoBringsMineBack) {
  TwoHands hand;
  const Board mine = hand.board();
  hand.they_write();
  hand.save();
  hand.click(page + "Take the file");
  EXPECT_DOUBLE_EQ(hand.board().slots.width, 0.6);
  EXPECT_NE(hand.board().board.thickness, 6.25);
  EXPECT_FALSE(hand.desk().document.dirty());
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_EQ(hand.board(), mine);
  hand.save();
  EXPECT_DOUBLE_EQ(thickness_in(hand.file()), 6.25);
}

TEST(Elsewhere, MineReplacesTheirValuesAndLeavesTheirComments) {
  TwoHands hand;
  hand.they_write();
  hand.save();
  hand.click(page + "Replace the file");
  EXPECT_EQ(hand.desk().view.dialog, Dialog::none);
  EXPECT_DOUBLE_EQ(thickness_in(hand.file()), 6.25);
  EXPECT_DOUBLE_EQ(read_board(hand.file().string()).board.slots.width, 0.584);
  EXPECT_THAT(text_of(hand.file()), testing::HasSubstr("# wider wire, says the workshop"));
}

TEST(Elsewhere, IsNoticedWithoutSaving) {
  TwoHands hand;
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  ASSERT_FALSE(hand.desk().document.dirty());
  hand.they_write();
  hand.until([&] { return hand.desk().view.dialog == Dialog::elsewhere; }, 5);
  hand.click(page + "Not now");
  for (int i = 0; i < 15; ++i) hand.rest_and_frame(0.1);
  EXPECT_EQ(hand.desk().view.dialog, Dialog::none) << "put off means until it changes again";
  hand.theirs += "# and again\n";
  hand.they_write();
  hand.until([&] { return hand.desk().view.dialog == Dialog::elsewhere; }, 5);
}

TEST(Elsewhere, AFileThatCannotBeReadAsABoardCannotBeTaken) {
  TwoHands hand;
  hand.theirs = "format = 1\n[scale\n";
  hand.they_write();
  hand.save();
  ASSERT_EQ(hand.desk().view.dialog, Dialog::elsewhere);
  EXPECT_FALSE(hand.see(page + "Take the file").enabled);
  hand.click(page + "Keep both");
  EXPECT_EQ(text_of(hand.file()), hand.theirs);
  EXPECT_DOUBLE_EQ(thickness_in(hand.folder() / "heron-six-mine.toml"), 6.25);
}

TEST(Elsewhere, ClosingGoesOnWhenTheChoiceIsMade) {
  TwoHands hand;
  hand.they_write();
  hand.close();
  hand.click("Unsaved changes/Save");
  EXPECT_FALSE(hand.app().finished());
  hand.frames(3);
  hand.click(page + "Keep both");
  EXPECT_TRUE(hand.app().finished());
  EXPECT_DOUBLE_EQ(thickness_in(hand.folder() / "heron-six-mine.toml"), 6.25);
}

TEST(Elsewhere, AFileThatIsGoneIsWrittenAnew) {
  TwoHands hand;
  fs::remove(hand.file());
  hand.save();
  EXPECT_DOUBLE_EQ(thickness_in(hand.file()), 6.25);
}

TEST(Elsewhere, AReadOnlyBoardAsksForAnotherName) {
  TwoHands hand;
  const std::string before = text_of(hand.file());
  fs::permissions(hand.file(), fs::perms(0444));
  hand.save();
  EXPECT_EQ(text_of(hand.file()), before);
  ASSERT_EQ(hand.desk().view.dialog, Dialog::save_as);
  hand.click("Save the board as/Save");
  EXPECT_EQ(text_of(hand.file()), before);
  EXPECT_EQ(fs::status(hand.file()).permissions(), fs::perms(0444));
  EXPECT_DOUBLE_EQ(thickness_in(hand.folder() / "heron-six-mine.toml"), 6.25);
}

TEST(Elsewhere, ARecoveredBoardDoesNotOverwriteWhatCameAfterTheCrash) {
  TwoHands hand;
  viewer::Recovered left;
  left.copy = hand.folder() / "copy.toml", left.board = hand.file(), left.folder = hand.folder();
  left.text = viewer::text_to_save(hand.desk().document), left.checksum = sha256(text_of(hand.file()));
  hand.they_write();
  hand.desk().versions.left_over = left;
  viewer::take_left_over(hand.desk());
  EXPECT_DOUBLE_EQ(hand.board().board.thickness, 6.25);
  hand.save();
  EXPECT_EQ(hand.desk().view.dialog, Dialog::elsewhere);
  EXPECT_EQ(text_of(hand.file()), hand.theirs);
}

// A pipe that nobody writes into would hold up whoever opens it: pipe(7).
TEST(Elsewhere, PipesHoldNothingUp) {
  Folder folder;
  ASSERT_EQ(mkfifo((folder.path / "viewer.json").c_str(), 0600), 0);
  EXPECT_EQ(viewer::load_settings(folder.path).settings, viewer::Settings());
  const viewer::Recovery recovery(folder.path);
  // Process numbers beyond the system's largest belong to nobody: proc(5), pid_max is at most 2^22.
  ASSERT_EQ(mkfifo((folder.path / "recovery-5000001.toml").c_str(), 0600), 0);
  EXPECT_FALSE(recovery.find_left());
  write(folder.path / "recovery-5000002.toml", "format = 1\n");
  const auto left = recovery.find_left();
  ASSERT_TRUE(left);
  EXPECT_EQ(left->text, "format = 1\n");
  ASSERT_EQ(mkfifo((folder.path / "recovery-5000002.path").c_str(), 0600), 0);
  EXPECT_TRUE(recovery.find_left());
}

}  // namespace
}  // namespace sagitta::test
