/// Dialogs for files: ours, and the desktop's own in its place, with a stand-in on PATH.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "gui/Change.hpp"
#include "gui/StandIn.hpp"
#include "jobs/OtherProgram.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;
using viewer::Dialog;

std::vector<std::string> lines_of(const fs::path& file) {
  std::vector<std::string> lines;
  std::istringstream text(text_of(file));
  for (std::string line; std::getline(text, line);) lines.push_back(line);
  return lines;
}

HandSpec with_desktop() {
  HandSpec spec{"heron-six"};
  spec.desktop_dialogs = true;
  return spec;
}

TEST(Files, TheNameHasTheKeyboardAndEnterSaves) {
  Hand hand;
  change(hand, [](Board& b) { b.board.thickness = 6.1; });
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.frames(6);
  hand.press(GLFW_KEY_A, GLFW_MOD_CONTROL);
  hand.type("second");
  hand.press(GLFW_KEY_ENTER);
  hand.frames(4);
  EXPECT_EQ(hand.desk().view.dialog, Dialog::none);
  EXPECT_EQ(hand.desk().document.path(), hand.folder() / "second.toml");
  EXPECT_TRUE(fs::exists(hand.folder() / "second.toml"));
}

TEST(Files, ANameThatWasChosenForSomethingElseIsNotOffered) {
  Hand hand;
  fs::copy_file(hand.file(), hand.folder() / "reed.toml");
  hand.press(GLFW_KEY_O, GLFW_MOD_CONTROL);
  hand.frames(3);
  hand.click("Open a board/reed.toml");
  hand.press(GLFW_KEY_ESCAPE), hand.press(GLFW_KEY_ESCAPE);
  ASSERT_EQ(hand.desk().view.dialog, Dialog::none);
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.frames(3);
  EXPECT_EQ(hand.text("Save the board as/name"), "heron-six.toml");
}

TEST(Files, AFolderIsMadeAndGoneInto) {
  Hand hand;
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.frames(4);
  hand.click("Save the board as/New folder");
  hand.frames(2);
  EXPECT_FALSE(hand.see("Save the board as/Make it").enabled);
  hand.click("Save the board as/new folder");
  hand.type("orchestra");
  hand.click("Save the board as/Make it");
  hand.frames(3);
  EXPECT_TRUE(fs::is_directory(hand.folder() / "orchestra"));
  hand.click("Save the board as/Save");
  hand.frames(3);
  EXPECT_EQ(hand.desk().document.path(), hand.folder() / "orchestra/heron-six.toml");
}

TEST(Files, PlacesLeadBackAndAChosenBoardIsDrawn) {
  Hand hand;
  hand.press(GLFW_KEY_O, GLFW_MOD_CONTROL);
  hand.frames(4);
  hand.click("Open a board/up");
  hand.frames(2);
  EXPECT_NE(fs::path(hand.desk().forms.browsing.folder), hand.folder());
  hand.click("Open a board/This board's folder");
  hand.frames(2);
  EXPECT_EQ(fs::path(hand.desk().forms.browsing.folder), hand.folder());
  EXPECT_FALSE(hand.sees("Open a board/preview"));
  hand.click("Open a board/heron-six.toml");
  hand.frames(3);
  EXPECT_TRUE(hand.sees("Open a board/preview"));
  EXPECT_TRUE(hand.desk().forms.browsing.preview.layout);
}

TEST(Files, TheDesktopsDialogIsAskedWithoutAShellAndItsAnswerIsOpened) {
  Hand hand(with_desktop());
  const fs::path odd = hand.folder() / "a player's $(touch spoiled) board.toml";
  fs::copy_file(hand.file(), odd);
  const StandIn zenity(hand.folder(), "zenity", odd.string() + "\n");
  hand.press(GLFW_KEY_O, GLFW_MOD_CONTROL);
  hand.until([&] { return hand.desk().document.path() == odd; }, 20);
  EXPECT_EQ(hand.desk().view.dialog, Dialog::none);
  EXPECT_THAT(lines_of(zenity.told),
              testing::ElementsAre("--file-selection", "--title=Open a board",
                                   "--filename=" + hand.folder().string() + "/", "--file-filter=Boards | *.toml"));
  EXPECT_FALSE(fs::exists(fs::current_path() / "spoiled"));
}

TEST(Files, KdialogIsAskedInItsOwnWords) {
  if (!viewer::find_program("zenity").empty()) GTEST_SKIP() << "zenity is installed and comes first";
  Hand hand(with_desktop());
  const fs::path to = hand.folder() / "third.toml";
  const StandIn kdialog(hand.folder(), "kdialog", to.string() + "\n");
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.until([&] { return hand.desk().document.path() == to; }, 20);
  EXPECT_TRUE(fs::exists(to));
  EXPECT_THAT(lines_of(kdialog.told), testing::ElementsAre("--title", "Save the board as", "--getsavefilename",
                                                           hand.file().string(), "Boards (*.toml)"));
}

TEST(Files, ADesktopsDialogThatIsClosedChangesNothing) {
  Hand hand(with_desktop());
  const StandIn zenity(hand.folder(), "zenity", "", 1);
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.until([&] { return fs::exists(zenity.told) && !hand.desk().chooser.asking(); }, 20);
  hand.frames(4);
  EXPECT_EQ(hand.desk().document.path(), hand.file());
  EXPECT_EQ(hand.desk().view.dialog, Dialog::none);
}

// The desktop asked about "old"; the ending makes it another file, which is there: that is asked here.
TEST(Files, AnEndingThatIsPutOnReplacesNothingUnasked) {
  Hand hand(with_desktop());
  write(hand.folder() / "old.toml", "kept");
  const StandIn zenity(hand.folder(), "zenity", (hand.folder() / "old").string() + "\n");
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.until([&] { return hand.sees("Save the board as/Replace"); }, 20);
  EXPECT_EQ(text_of(hand.folder() / "old.toml"), "kept");
  hand.click("Save the board as/Replace");
  hand.frames(4);
  EXPECT_NE(text_of(hand.folder() / "old.toml"), "kept");
}

}  // namespace
}  // namespace sagitta::test
