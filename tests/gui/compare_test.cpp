/// Two boards beside and over each other, notes on the board and its findings, the picture kept, papers printed:
/// asserted on the list that the program's own command gives, on files, and on what a stand-in for the printer was
/// called with.

#include "package/Compare.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>

#include "Places.hpp"
#include "gui/Change.hpp"
#include "gui/StandIn.hpp"
#include "input/PreparedFile.hpp"
#include "jobsheet/JobRecord.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;
using viewer::Dialog;

/// Heron-six beside a copy of it that is thicker, has a wider slot and one fret fewer.
struct TwoBoards : Hand {
  TwoBoards() {
    other = folder() / "other.toml";
    fs::copy_file(file(), other);
    change(*this, [](Board& b) { b.board.thickness += 0.5, b.slots.width = 0.6, b.scale.frets -= 1; });
    press(GLFW_KEY_D, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
    frames(3);
    click("Compare with a board/other.toml");
    click("Compare with a board/Compare");
    wait();
  }
  void open_page() {
    click("Checks/See both boards");
    frames(3);
    wait();
    frames(2);
  }
  fs::path other;
};

TEST(Compare, ThePageListsWhatTheCommandLists) {
  TwoBoards hand;
  hand.open_page();
  const auto from = std::get<PreparedBoard>(prepare(read_board(hand.other.string())));
  BoardFile here;
  here.board = hand.board();
  const auto to = std::get<PreparedBoard>(prepare(here));
  const std::vector<KeyDifference> wanted = differences(from, to);
  ASSERT_EQ(wanted.size(), 3U);
  const auto found = hand.desk().comparing.found();
  ASSERT_TRUE(found);
  EXPECT_EQ(found->keys.size(), wanted.size());
  for (const KeyDifference& key : wanted) {
    const std::string words = hand.text("Two boards compared/difference " + key.key);
    EXPECT_THAT(words, testing::HasSubstr(key.a)) << key.key;
    EXPECT_THAT(words, testing::HasSubstr(key.b)) << key.key;
  }
  EXPECT_EQ(found->all, effect_of(from, to));
  EXPECT_EQ(found->all.slots, -1);
  // 0.5 mm more over the whole board, by that decision alone.
  const auto thicker = std::find_if(found->keys.begin(), found->keys.end(),
                                    [](const KeyDifference& key) { return key.key == "board.thickness"; });
  ASSERT_TRUE(thicker != found->keys.end() && thicker->effect);
  EXPECT_NEAR(thicker->effect->depth, 0.5, 1e-9);
}

TEST(Compare, BothAreDrawnAtOneScaleWithTheirNutsUnderEachOther) {
  TwoBoards hand;
  hand.open_page();
  const auto strip = [&](const char* name) { return hand.see(std::string("Two boards compared/") + name); };
  const viewer::Seen other = strip("other board"), here = strip("this board"), both = strip("both boards");
  EXPECT_LT(other.high.y, here.low.y);
  EXPECT_LT(here.high.y, both.low.y);
  EXPECT_FLOAT_EQ(other.low.x, here.low.x);
  EXPECT_FLOAT_EQ(other.high.x, here.high.x);
  EXPECT_GT(other.high.x - other.low.x, 600) << "a long thin thing needs the width";
  hand.press(GLFW_KEY_ESCAPE);
  EXPECT_EQ(hand.desk().view.dialog, Dialog::none);
}

TEST(Compare, ItsLinesLieOverThePictureAndCanBePutAway) {
  TwoBoards hand;
  const Layout& layout = hand.desk().results.comparison->model->prepared->layout();
  // Its outline, its slots and one outline for each dot.
  const std::size_t lines = 1 + layout.slots.size() + layout.markers.size();
  EXPECT_EQ(hand.text("Board/other board"), std::to_string(lines));
  const auto with = hand.app().snapshot();
  hand.press(GLFW_KEY_B);
  hand.wait();
  EXPECT_FALSE(hand.sees("Board/other board"));
  EXPECT_GT(Hand::changed(with, hand.app().snapshot()), 0.0005);
  hand.press(GLFW_KEY_D, GLFW_MOD_CONTROL | GLFW_MOD_ALT);
  EXPECT_FALSE(hand.desk().results.comparison);
}

TEST(Compare, ABoardThatCannotBeBuiltIsSaidAndNotTriedForEver) {
  Hand hand;
  const fs::path other = hand.folder() / "other.toml";
  std::string text = text_of(hand.file());
  write(other,
        text + "\n[[inlays]]\nshape = \"artwork\"\nfile = \"nowhere.svg\"\nalong = 10\ndepth = 1\nfrets = [1]\n");
  hand.press(GLFW_KEY_D, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.frames(3);
  hand.click("Compare with a board/other.toml");
  hand.click("Compare with a board/Compare");
  hand.wait();
  ASSERT_TRUE(hand.desk().results.comparison);
  EXPECT_FALSE(hand.desk().results.comparison->model);
  EXPECT_FALSE(hand.desk().results.comparison->trouble.empty());
  EXPECT_TRUE(hand.app().settled());
  EXPECT_GT(hand.app().rest(), 0);
}

TEST(Notes, AFindingAndTheBoardHaveTheirsAndTheJobSheetCarriesThem) {
  Hand hand;
  change(hand, [](Board& b) { b.slots.depth = 1.2; });
  ASSERT_TRUE(hand.sees("Checks/finding 1"));
  hand.click("Checks/finding 1");
  hand.wait();
  const std::string name = hand.desk().results.good->findings[0].name;
  hand.click("Checks/Note that it was seen");
  hand.frames(3);
  hand.type("This wood is laminated");
  hand.press(GLFW_KEY_ENTER);
  hand.click("Decisions/Add note");
  hand.wait();
  ASSERT_EQ(hand.board().notes.size(), 2U);
  EXPECT_EQ(hand.board().notes[0], (Note{"This wood is laminated", name, ""})) << "no name is asked for";
  EXPECT_TRUE(hand.board().notes[1].finding.empty());
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL);
  const Board kept = read_board(hand.file().string()).board;
  EXPECT_EQ(kept.notes, hand.board().notes);
  EXPECT_THAT(notes_of(kept), testing::Contains(testing::HasSubstr("This wood is laminated")));
}

TEST(SavePicture, IsThePictureThatIsSeen) {
  Hand hand;
  hand.press(GLFW_KEY_2);
  hand.wait();
  hand.press(GLFW_KEY_P, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.frames(3);
  EXPECT_EQ(hand.text("Save the picture as/name"), "heron-six.png");
  hand.click("Save the picture as/Save");
  hand.wait();
  hand.frames(3);
  const std::string png = text_of(hand.folder() / "heron-six.png");
  ASSERT_GT(png.size(), 2000U);
  const auto number = [&](std::size_t at) {
    return static_cast<unsigned char>(png[at + 2]) * 256 + static_cast<unsigned char>(png[at + 3]);
  };
  EXPECT_EQ(number(16), hand.app().picture().width());  // PNG, second edition, 11.2.2: IHDR holds width and height
  EXPECT_EQ(number(20), hand.app().picture().height());
  EXPECT_EQ(png.substr(png.size() - 8, 4), "IEND");  // 11.2.5: the last chunk
  hand.desk().picture_wanted = hand.folder() / "nowhere/a.png";
  hand.frames(3);
  ASSERT_TRUE(hand.desk().view.failure);
  EXPECT_FALSE(fs::exists(hand.folder() / "nowhere"));
}

/// The export's page with its papers made.
struct Papers : Hand {
  Papers() {
    press(GLFW_KEY_E, GLFW_MOD_CONTROL);
    frames(3);
    wait();
    frames(3);
  }
  void print() {
    click("Export/Print these pages");
    wait();
    frames(3);
  }
};

TEST(Print, ThePaperShownGoesToThePrinterInTrueSize) {
  Folder bin;
  const fs::path copy = bin.path / "printed.pdf";
  const StandIn lp(bin.path, "lp");
  // It keeps what it is given, as a printer's queue does.
  const std::string script = text_of(bin.path / "bin/lp");
  write(bin.path / "bin/lp", "#!/bin/sh\nfor last; do :; done\ncp \"$last\" '" + copy.string() + "'\n" +
                                 script.substr(script.find('\n') + 1));
  fs::permissions(bin.path / "bin/lp", fs::perms::owner_all);
  Papers hand;
  const auto pages = hand.desk().paperwork.pages();
  ASSERT_TRUE(pages && !pages->pages.empty());
  const std::string document = pages->pages[hand.desk().forms.sending.page].document;
  hand.print();
  EXPECT_EQ(text_of(copy), pages->documents.at(document));
  EXPECT_EQ(text_of(copy).substr(0, 5), "%PDF-");
  std::ifstream told(lp.told);
  std::vector<std::string> words;
  for (std::string word; std::getline(told, word);) words.push_back(word);
  ASSERT_GE(words.size(), 5U);
  EXPECT_EQ(words[1], "media=A4");
  EXPECT_EQ(words[3], "print-scaling=none");
  EXPECT_FALSE(fs::exists(words.back())) << "nothing is left behind";
  EXPECT_TRUE(hand.desk().forms.sending.printed.good);
}

TEST(Print, APrinterThatGivesUpIsToldWhereTheEyeIs) {
  Folder bin;
  const StandIn lp(bin.path, "lp", "", 1);
  Papers hand;
  hand.print();
  EXPECT_FALSE(hand.desk().forms.sending.printed.good);
  EXPECT_TRUE(hand.see("Export/printed").in_view);
}

TEST(Print, WithoutAProgramThatPrintsItSaysWhatToDo) {
  Folder empty;
  const std::string before = std::getenv("PATH");
  Papers hand;
  ::setenv("PATH", empty.path.c_str(), 1);
  hand.print();
  ::setenv("PATH", before.c_str(), 1);
  EXPECT_FALSE(hand.desk().forms.sending.printed.good);
  EXPECT_FALSE(hand.text("Export/printed").empty());
}

}  // namespace
}  // namespace sagitta::test
