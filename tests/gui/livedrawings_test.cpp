/// Drawings while a drawing program works at them: changed on the disk, with other colours, torn and gone; dropped
/// where they are meant, before the board was ever saved, and taken back with their file. Asserted on the board, its
/// pieces and the files.

#include "app/LiveDrawings.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <unistd.h>

#include <chrono>

#include "Places.hpp"
#include "artwork/ReadArtwork.hpp"
#include "artwork/TrueSize.hpp"
#include "document/DrawingWatch.hpp"
#include "document/UnsavedFolder.hpp"
#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;

/// Squares of these sides in a row, each of its colour, as wide as the drawing says.
std::string squares(const std::vector<std::pair<double, std::string>>& all, const std::string& unit = "mm") {
  double wide = 0, high = 0;
  std::string shapes;
  for (const auto& [side, colour] : all) {
    shapes += "<rect x='" + std::to_string(wide) + "' width='" + std::to_string(side) + "' height='" +
              std::to_string(side) + "' fill='" + colour + "'/>";
    wide += side + 2, high = std::max(high, side);
  }
  wide -= 2;
  const std::string w = std::to_string(wide), h = std::to_string(high);
  return "<svg xmlns='http://www.w3.org/2000/svg' width='" + w + unit + "' height='" + h + unit + "' viewBox='0 0 " +
         w + " " + h + "'>" + shapes + "</svg>";
}

const std::string red = "#c02020", blue = "#2020c0", green = "#20a020";

/// Heron-six with a red and a blue square as its one inlay, red in bone.
struct Live : Hand {
  Live() {
    write(drawing(), squares({{8, red}, {4, blue}}));
    drop(drawing());
    press(GLFW_KEY_ESCAPE);
    Board draft = board();
    draft.inlays = {draft.inlays.back()};
    draft.inlays[0].colours[red] = "bone";
    desk().document.change(draft, "Test");
    wait();
  }
  fs::path drawing() const { return folder() / "squares.svg"; }
  /// As a drawing program writes, then as long as the window takes to see it.
  void redraw(const std::string& text) {
    write(drawing(), text);
    const std::uint64_t before = desk().results.reading;
    until_resting([&] { return desk().results.reading > before; });
    wait();
    frames(2);
  }
  void until_resting(const std::function<bool()>& holds) {
    for (int i = 0; i < 100 && !holds(); ++i) rest_and_frame(0.1);
    ASSERT_TRUE(holds());
  }
  std::size_t pieces() { return desk().results.good->prepared->inlays().pieces.size(); }
};

TEST(LiveDrawings, WhatIsDrawnAnewIsOnTheBoard) {
  Live hand;
  ASSERT_EQ(hand.pieces(), 2U);
  const std::size_t steps = hand.desk().document.steps();
  const double along = *hand.board().inlays[0].along;
  hand.redraw(squares({{8, red}, {4, blue}, {6, red}}));
  EXPECT_EQ(hand.pieces(), 3U);
  EXPECT_EQ(hand.desk().document.steps(), steps) << "the board itself has not changed";
  EXPECT_EQ(*hand.board().inlays[0].along, along);
  EXPECT_FALSE(hand.desk().view.failure);
  EXPECT_THAT(hand.desk().view.message, testing::HasSubstr("squares.svg"));
  EXPECT_FALSE(hand.desk().results.behind.picture);
}

TEST(LiveDrawings, OneThatIsNamedBetweenTwoLooksIsKnownFromThenOn) {
  const fs::path folder = fs::path(testing::TempDir()) / "watched-drawing";
  fs::create_directories(folder);
  Board board;
  board.folder = folder.string();
  viewer::DrawingWatch watch;
  EXPECT_THAT(watch.changed(board, 10), testing::IsEmpty());
  write(folder / "one.svg", squares({{8, red}}));
  board.inlays.emplace_back();
  board.inlays[0].shape = InlayShape::artwork;
  board.inlays[0].file = "one.svg";
  EXPECT_THAT(watch.changed(board, 10.2), testing::IsEmpty());
  write(folder / "one.svg", squares({{8, red}, {4, blue}}));
  EXPECT_THAT(watch.changed(board, 11), testing::IsEmpty()) << "it may still be written";
  EXPECT_THAT(watch.changed(board, 12), testing::ElementsAre("one.svg"));
  fs::remove_all(folder);
}

TEST(LiveDrawings, AFileThatIsOnlyTouchedIsNotReadAgain) {
  Live hand;
  const std::uint64_t before = hand.desk().results.reading;
  const std::string said = hand.desk().view.message;
  fs::last_write_time(hand.drawing(), fs::file_time_type::clock::now());
  for (int i = 0; i < 35; ++i) hand.rest_and_frame(0.1);
  EXPECT_EQ(hand.desk().results.reading, before);
  EXPECT_EQ(hand.desk().view.message, said);
}

TEST(LiveDrawings, AColourThatCameGetsAMaterialByOneButton) {
  Live hand;
  hand.redraw(squares({{8, red}, {4, blue}, {6, green}}));
  ASSERT_TRUE(hand.desk().view.failure);
  EXPECT_FALSE(hand.desk().results.current()) << "no board without a material for each colour";
  hand.click("Board/Go to its colours");
  hand.frames(3);
  const viewer::Seen* button = hand.desk().ui.find("Decisions/inlays[0].colours give " + green);
  ASSERT_TRUE(button && button->in_view) << "the button that mends it is led to";
  hand.click("Decisions/inlays[0].colours give " + green);
  hand.wait();
  EXPECT_EQ(hand.board().inlays[0].colours.size(), 3U);
  EXPECT_TRUE(hand.board().inlays[0].colours.contains(green));
  EXPECT_EQ(hand.board().inlays[0].colours.at(red), "bone");
  EXPECT_TRUE(hand.desk().results.current());
  EXPECT_EQ(hand.pieces(), 3U);
  EXPECT_FALSE(hand.sees("Decisions/inlays[0].colours give " + green));
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_EQ(hand.board().inlays[0].colours.size(), 2U);
}

TEST(LiveDrawings, AMaterialWhoseColourIsGoneIsTakenOutByOneButton) {
  Live hand;
  hand.redraw(squares({{8, red}, {4, green}}));
  hand.click("Board/Go to its colours");
  hand.frames(3);
  hand.click("Decisions/inlays[0].colours drop " + blue);
  hand.click("Decisions/inlays[0].colours give " + green);
  hand.wait();
  const auto& colours = hand.board().inlays[0].colours;
  EXPECT_EQ(colours.size(), 2U);
  EXPECT_EQ(colours.at(red), "bone");
  EXPECT_TRUE(colours.contains(green));
  EXPECT_TRUE(hand.desk().results.current());
}

TEST(LiveDrawings, ATornOneIsToldAndThePictureStays) {
  Live hand;
  hand.redraw("<svg><rect");
  ASSERT_TRUE(hand.desk().view.failure);
  hand.until([&] { return hand.desk().results.behind.picture; }, 5);
  EXPECT_EQ(hand.pieces(), 2U) << "the picture is of the drawing before";
  write(hand.folder() / "other.svg", squares({{9, red}, {3, blue}, {2, blue}}));
  hand.click("Board/Choose another drawing");
  hand.frames(3);
  hand.click("Choose a drawing/other.svg");
  hand.click("Choose a drawing/Take it");
  hand.wait();
  EXPECT_EQ(hand.board().inlays.size(), 1U);
  EXPECT_EQ(hand.board().inlays[0].file, "other.svg");
  EXPECT_EQ(hand.board().inlays[0].colours.at(red), "bone");
  EXPECT_EQ(hand.pieces(), 3U);
}

TEST(LiveDrawings, AnotherIsChosenInItsRowAndKeepsPlaceAndSize) {
  Live hand;
  write(hand.folder() / "other.svg", squares({{9, red}, {3, blue}, {2, blue}}));
  Board draft = hand.board();
  draft.inlays[0].shift_along = 2.5, draft.inlays[0].frets = {5};
  hand.desk().document.change(draft, "Test");
  hand.wait();
  hand.open_group(6);
  hand.click("Decisions/Choose another drawing");
  hand.frames(3);
  hand.click("Choose a drawing/other.svg");
  hand.click("Choose a drawing/Take it");
  hand.wait();
  draft.inlays[0].file = "other.svg";
  EXPECT_EQ(hand.board(), draft) << "only its file is another";
}

TEST(LiveDrawings, OneThatIsGoneIsMissedAndTakenAgainWhenItIsBack) {
  Live hand;
  const std::string text = text_of(hand.drawing());
  fs::remove(hand.drawing());
  hand.until_resting([&] { return hand.desk().view.failure.has_value(); });
  hand.until([&] { return hand.desk().results.behind.picture; }, 5);
  hand.redraw(text);
  EXPECT_FALSE(hand.desk().results.behind.picture);
  EXPECT_TRUE(hand.desk().results.current());
}

TEST(LiveDrawings, LookingAtTheDiskCostsNothing) {
  Live hand;
  const auto used = [] {
    rusage now{};
    ::getrusage(RUSAGE_SELF, &now);
    const auto seconds = [](const timeval& t) { return double(t.tv_sec) + 1e-6 * double(t.tv_usec); };
    return seconds(now.ru_utime) + seconds(now.ru_stime);
  };
  hand.wait();
  const auto start = std::chrono::steady_clock::now();
  const double before = used();
  int frames = 0;
  while (std::chrono::steady_clock::now() - start < std::chrono::seconds(6)) hand.rest_and_frame(6), ++frames;
  const double share = (used() - before) / 6;
  std::printf("idle %.3f %% of one processor, %d looks in 6 s\n", 100 * share, frames);
  EXPECT_LT(share, 0.005);  // shown as 0 %
  EXPECT_LE(frames, 8) << "once a second";
}

/// A place of the board in the window, on its playing surface.
ImVec2 pixel(Hand& hand, double x, double y) {
  const viewer::Seen picture = hand.see("Board/picture");
  const auto at = hand.desk().view.camera.project({static_cast<float>(x), static_cast<float>(y), 6.3f});
  return {picture.low.x + at->x, picture.low.y + at->y};
}

TEST(LiveDrawings, ADropIsWhereThePointerIsAndAsLargeAsDrawn) {
  Hand hand;
  Folder elsewhere;
  write(elsewhere.path / "squares.svg", squares({{8, red}, {4, blue}}));
  const Layout& layout = hand.desk().results.good->prepared->layout();
  const Point middle = between(layout.frets[6].middle, layout.frets[7].middle, 0.5);
  const ImVec2 at = pixel(hand, middle.x + 5, -10);
  hand.move(at.x, at.y);
  hand.frames(2);
  hand.drop(elsewhere.path / "squares.svg");
  hand.wait();
  const Inlay& inlay = hand.board().inlays.back();
  EXPECT_EQ(inlay.frets, std::vector<int>{7});
  EXPECT_NEAR(inlay.shift_along, 5, 1.1);     // whole halves of a mm, and a pixel is about 0.7 mm
  EXPECT_NEAR(inlay.shift_across, -10, 1.1);  // y = -10 is on the bass side
  EXPECT_DOUBLE_EQ(*inlay.along, 14);         // 8 + 2 + 4 mm by the file's own width
  EXPECT_FALSE(inlay.across);
  EXPECT_FALSE(hand.desk().forms.rows.typing()) << "nothing is asked";
}

TEST(LiveDrawings, OneWithoutASizeIsAskedForIt) {
  for (const std::string& unit : {std::string(), std::string("px")}) {
    Hand hand;
    write(hand.folder() / "squares.svg", squares({{8, red}}, unit));
    hand.drop(hand.folder() / "squares.svg");
    hand.frames(4);
    ASSERT_TRUE(hand.desk().forms.rows.typing()) << unit;
    hand.type("17");
    hand.press(GLFW_KEY_ENTER);
    EXPECT_DOUBLE_EQ(*hand.board().inlays.back().across, 17);
  }
  EXPECT_TRUE(says_its_size((fs::path(places::source()) / "presets/egret-figure.svg").string()));
}

TEST(LiveDrawings, APictureOfPixelsIsToldAsOneWhateverItIsCalled) {
  Hand hand;
  const Board before = hand.board();
  std::vector<std::string> words;
  for (const char* name : {"photo.png", "photo.svg"}) {
    write(hand.folder() / name, "\x89PNG\r\n\x1a\n");  // PNG, second edition, 5.2: the signature
    hand.drop(hand.folder() / name);
    ASSERT_TRUE(hand.desk().view.failure) << name;
    words.push_back(hand.desk().view.failure->words.substr(std::string(name).size()));
    hand.click("Board/I have read it");
  }
  EXPECT_EQ(words[0], words[1]) << "the same sentence";
  EXPECT_EQ(hand.board(), before);
}

TEST(LiveDrawings, AHandThatHoldsStillDoesNotKeepTheWindowBusy) {
  Live hand;
  hand.open_group(3);
  hand.drag("Decisions/board.thickness", 40, 0, false);
  for (int i = 0; i < 12; ++i) hand.rest_and_frame(0.1);
  ASSERT_TRUE(hand.desk().document.previewing());
  hand.until([&] { return hand.app().rest() > 1; }, 20);
  hand.release();
}

TEST(LiveDrawings, UndoTakesTheCopiedFileAlongAndRedoBringsItBack) {
  Hand hand;
  Folder elsewhere;
  const std::string text = squares({{8, red}, {4, blue}});
  write(elsewhere.path / "squares.svg", text);
  hand.drop(elsewhere.path / "squares.svg");
  hand.press(GLFW_KEY_ESCAPE);
  hand.wait();
  ASSERT_EQ(text_of(hand.folder() / "squares.svg"), text);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_FALSE(fs::exists(hand.folder() / "squares.svg"));
  EXPECT_EQ(text_of(elsewhere.path / "squares.svg"), text);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.wait();
  EXPECT_EQ(text_of(hand.folder() / "squares.svg"), text);
  EXPECT_TRUE(hand.desk().results.current());
  // Worked at since it was copied, or the only one left: it stays.
  write(hand.folder() / "squares.svg", squares({{9, red}, {4, blue}}));
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_TRUE(fs::exists(hand.folder() / "squares.svg"));
  write(hand.folder() / "squares.svg", text);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  fs::remove(elsewhere.path / "squares.svg");
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_TRUE(fs::exists(hand.folder() / "squares.svg"));
}

TEST(LiveDrawings, ABoardFileThatNamesTheCopyKeepsIt) {
  Hand hand;
  Folder elsewhere;
  write(elsewhere.path / "squares.svg", squares({{8, red}, {4, blue}}));
  hand.drop(elsewhere.path / "squares.svg");
  hand.press(GLFW_KEY_ESCAPE);
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  hand.wait();
  EXPECT_TRUE(fs::exists(hand.folder() / "squares.svg"));
}

std::vector<fs::path> unsaved_folders(const fs::path& state) {
  std::vector<fs::path> found;
  if (fs::exists(state))
    for (const auto& entry : fs::directory_iterator(state))
      if (viewer::is_unsaved_folder(state, entry.path())) found.push_back(entry.path());
  return found;
}

TEST(LiveDrawings, ADrawingIsTakenBeforeTheFirstSaveAndComesAlongWithIt) {
  Hand hand(HandSpec{""});
  const fs::path state = hand.folder() / "state", to = hand.folder() / "shop";
  fs::create_directory(to);
  Folder elsewhere;
  const std::string text = squares({{8, red}, {4, blue}});
  write(elsewhere.path / "squares.svg", text);
  ASSERT_TRUE(hand.desk().document.path().empty());
  hand.drop(elsewhere.path / "squares.svg");
  hand.press(GLFW_KEY_ESCAPE);
  hand.wait();
  EXPECT_FALSE(hand.desk().view.failure);
  ASSERT_EQ(hand.board().inlays.back().file, "squares.svg");
  EXPECT_TRUE(hand.desk().results.current());
  ASSERT_EQ(unsaved_folders(state).size(), 1U);
  EXPECT_EQ(text_of(unsaved_folders(state)[0] / "squares.svg"), text);
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL);
  hand.frames(3);
  hand.desk().forms.browsing.folder = to.string();
  hand.frames(2);
  hand.click("Save the board as/Save");
  hand.wait();
  EXPECT_EQ(hand.desk().document.path().parent_path(), to);
  EXPECT_EQ(text_of(to / "squares.svg"), text);
  EXPECT_TRUE(hand.desk().results.current());
  EXPECT_TRUE(unsaved_folders(state).empty());
  EXPECT_TRUE(read_board(hand.desk().document.path().string()).sound());
}

TEST(LiveDrawings, SavingIntoAFolderWithAnotherDrawingOfThatNameIsRefused) {
  Live hand;
  Folder shop;
  write(shop.path / "squares.svg", squares({{5, red}, {4, blue}}));
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.frames(3);
  hand.desk().forms.browsing.folder = shop.path.string();
  hand.frames(2);
  hand.click("Save the board as/Save");
  hand.frames(3);
  EXPECT_FALSE(fs::exists(shop.path / "heron-six.toml"));
  EXPECT_EQ(hand.desk().document.path(), hand.file());
  EXPECT_THAT(hand.desk().forms.browsing.message, testing::HasSubstr("squares.svg"));
}

TEST(LiveDrawings, WhatIsDifferentIsToldInFigures) {
  using viewer::DrawingFacts;
  const DrawingFacts before{{red, blue}, 5, {16, 10}}, now{{red, green}, 7, {20, 10}};
  const std::string words = viewer::difference_words(before, now, {});
  for (const std::string& part : {std::string("2"), green, blue, std::string("20 mm"), std::string("16 mm")})
    EXPECT_THAT(words, testing::HasSubstr(part));
  EXPECT_THAT(words, testing::Not(testing::HasSubstr(red)));
  EXPECT_FALSE(viewer::difference_words(before, before, {}).empty());
}

}  // namespace
}  // namespace sagitta::test
