/// The frame around a drawing on the board: when it is there, what a drag leaves behind, and what is written.

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "board/Length.hpp"
#include "gui/GripHand.hpp"
#include "widgets/Pointers.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;

TEST(Frames, EscapeGivesBackWhatWasBefore) {
  for (const char* name : {"turning grip", "sizing grip 1"}) {
    GripHand hand;
    hand.choose();
    const Board before = hand.board();
    const std::size_t steps = hand.desk().document.steps();
    const ImVec2 from = hand.grip(name);
    hand.pull(from, {from.x - 40, from.y + 25}, false, false);
    EXPECT_NE(hand.board(), before);
    hand.press(GLFW_KEY_ESCAPE);
    EXPECT_EQ(hand.board(), before);
    hand.move(from.x - 60, from.y);
    hand.release();
    EXPECT_EQ(hand.board(), before) << "what the hand still does means nothing";
    EXPECT_EQ(hand.desk().document.steps(), steps);
    EXPECT_TRUE(hand.sees("Board/turning grip"));
    hand.press(GLFW_KEY_ESCAPE);
    EXPECT_FALSE(hand.sees("Board/turning grip")) << "a second one puts the frame away";
  }
}

TEST(Frames, ADragAlongTheBoardIsGivenBackTooAndShiftHoldsItOffItsSnaps) {
  GripHand hand;
  hand.choose();
  const Point middle = hand.marker();
  const ImVec2 from = hand.window_of(middle, {-4, 2}), to = hand.window_of(middle, {8, 2.6});
  const Board before = hand.board();
  hand.pull(from, to, true, false);
  EXPECT_NEAR(hand.inlay().shift_along, 12, 0.4);  // a pixel is about a quarter of a mm
  EXPECT_EQ(hand.inlay().shift_across, 0);
  hand.press(GLFW_KEY_ESCAPE);
  hand.release();
  hand.wait();  // the piece lies there again
  EXPECT_EQ(hand.board(), before);
  hand.pull(from, to, false);
  EXPECT_NEAR(hand.inlay().shift_across, 0.6, 0.4);
  EXPECT_NE(hand.inlay().shift_across, 0);
}

TEST(Frames, OneDragIsOneStepOfUndo) {
  GripHand hand;
  hand.choose();
  const Board before = hand.board();
  const std::size_t steps = hand.desk().document.steps();
  ImVec2 from = hand.grip("turning grip");
  hand.pull(from, {from.x + 60, from.y + 20}, true);
  const Board turned_by = hand.board();
  EXPECT_EQ(hand.desk().document.steps(), steps + 1);
  EXPECT_EQ(hand.desk().document.undo_name(), "Turn the inlay");
  from = hand.grip("sizing grip 1");
  hand.pull(from, {from.x + 20, from.y}, true);
  EXPECT_EQ(hand.desk().document.steps(), steps + 2);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_EQ(hand.board(), turned_by);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_EQ(hand.board(), before);
}

TEST(Frames, AClickOnAGripChangesNothing) {
  GripHand hand;
  Board draft = hand.board();
  draft.inlays[0].along = 20.3, draft.inlays[0].turn_degrees = 31;
  hand.show(draft);
  hand.choose();
  const std::size_t steps = hand.desk().document.steps();
  for (const char* name : {"turning grip", "sizing grip 4"}) {
    const ImVec2 at = hand.grip(name);
    hand.drag_from(at.x, at.y, 2, 1);
  }
  EXPECT_EQ(hand.board(), draft);
  EXPECT_EQ(hand.desk().document.steps(), steps);
}

TEST(Frames, TheFileSavedHasJustThoseKeysChanged) {
  GripHand hand;
  const fs::path file = hand.folder() / "own.toml";
  const std::string inlay = "[[inlays]]\nshape = \"artwork\"  # the oblong\nfile = \"oblong.svg\"\nfrets = [3]\n";
  const std::string text =
      "base = \"heron-six.toml\"\nname = \"own\"\n\n" + inlay + "along = 20  # long\ndepth = 1.5\nturn = 0\n";
  write(file, text);
  viewer::Desk& desk = hand.desk();
  hand.drop(file);
  hand.until([&] { return desk.document.path() == file || desk.view.dialog == viewer::Dialog::unsaved; });
  if (desk.view.dialog == viewer::Dialog::unsaved) hand.click("Unsaved changes/Throw away");
  hand.wait();
  ASSERT_EQ(desk.document.path(), file);
  hand.look("view above"), hand.near(hand.marker()), hand.choose();
  hand.turn(45, true), hand.size(0.75, true);
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL);
  hand.wait();
  EXPECT_EQ(text_of(file),
            "base = \"heron-six.toml\"\nname = \"own\"\n\n" + inlay + "along = 15  # long\ndepth = 1.5\nturn = 45\n");
}

TEST(Frames, NumbersFromTheHandAreShortInTheFile) {
  GripHand hand;
  hand.choose();
  for (const char* name : {"turning grip", "sizing grip 3", ""}) {
    const ImVec2 from = *name ? hand.grip(name) : hand.window_of(hand.marker(), {-2, 1});
    hand.drag_from(from.x, from.y, 9, 9, false);
    hand.hold_shift();
    for (int i = 10; i < 40; ++i) {
      hand.move(std::floor(from.x) + static_cast<float>(i), std::floor(from.y) + 9);
      hand.frames(2);
      const Inlay& now = hand.inlay();
      for (const double value : {now.turn_degrees, *now.along, now.shift_along, now.shift_across})
        EXPECT_LE(decimal(value).size(), 6U) << name << " " << decimal(value);  // "-123.4", "123.45"
    }
    hand.release(), hand.hold_shift(false), hand.wait();
  }
  EXPECT_NE(hand.inlay().turn_degrees, 0);
  EXPECT_NE(hand.inlay().along, 20);
  EXPECT_NE(hand.inlay().shift_along, 0);
}

TEST(Frames, ShowOnlyForAChosenPieceWhereItMakesSense) {
  GripHand hand;
  const auto shown = [&] { return hand.sees("Board/turning grip") || hand.sees("Board/sizing grip 1"); };
  EXPECT_FALSE(shown()) << "nothing is chosen";
  hand.choose();
  EXPECT_TRUE(shown());
  for (const char* command : {"view below", "view bass-edge", "view nut-end"}) {
    hand.look(command);
    EXPECT_FALSE(shown()) << command;
  }
  hand.look("view bench");
  EXPECT_TRUE(shown());
  hand.desk().view.stage = Stage::blank;
  hand.frames(3), hand.wait();
  EXPECT_FALSE(shown()) << "no pocket is cut yet";
  hand.desk().view.stage = Stage::pocketed;
  hand.frames(3), hand.wait();
  EXPECT_TRUE(shown());
  Board draft = hand.board();
  draft.board.past_last_fret = 0.1;  // its end meets the last slot
  hand.show(draft);
  ASSERT_FALSE(hand.desk().results.model->faults.empty());
  EXPECT_FALSE(shown()) << "it cannot be built";
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  hand.wait();
  EXPECT_TRUE(shown());
  hand.open_group(3);
  EXPECT_FALSE(shown()) << "other decisions are open";
}

TEST(Frames, ADroppedDrawingIsInTheHandAtOnceAndStaysThereUntilAnotherIsTaken) {
  GripHand hand;
  write(hand.folder() / "second.svg", text_of(hand.folder() / "oblong.svg"));
  hand.drop(hand.folder() / "second.svg");
  hand.wait();
  ASSERT_TRUE(hand.desk().view.chosen);
  EXPECT_EQ(hand.desk().view.chosen->inlay, 1);
  hand.press(GLFW_KEY_ESCAPE);  // out of the field that it leads to
  const viewer::Seen other = hand.see("Decisions/inlays[0].turn");
  hand.move((other.low.x + other.high.x) / 2, (other.low.y + other.high.y) / 2);
  hand.frames(3);
  EXPECT_EQ(hand.desk().view.chosen->inlay, 1) << "a pointer that passes by takes nothing";
  hand.enter("Decisions/inlays[0].turn", "10");
  EXPECT_EQ(hand.desk().view.chosen->inlay, 0);
  hand.wait();
  EXPECT_TRUE(hand.sees("Board/sizing grip 1"));
  Board draft = hand.board();
  draft.inlays.erase(draft.inlays.begin());
  hand.show(draft);
  EXPECT_FALSE(hand.sees("Board/sizing grip 1")) << "the numbers of the others have changed";
}

TEST(Frames, ADotIsNotTurned) {
  GripHand hand;
  Board draft = hand.board();
  draft.inlays = {Inlay()};
  draft.inlays[0].frets = {5}, draft.inlays[0].depth = 1.5, draft.inlays[0].diameter = 6;
  hand.show(draft);
  hand.near(hand.marker());
  hand.choose();
  EXPECT_TRUE(hand.sees("Board/sizing grip 1"));
  EXPECT_FALSE(hand.sees("Board/turning grip"));
}

TEST(Frames, TheFrameIsAtThePieceThatWasClickedAndAllFollow) {
  GripHand hand({"heron-six"}, {3, 5}, true);
  hand.near(hand.marker(1));
  hand.choose(1);
  const auto& frets = hand.desk().results.good->prepared->layout().frets;
  const double growth = (frets[5].middle.x - frets[4].middle.x) / (frets[3].middle.x - frets[2].middle.x);
  const Point middle = hand.marker(1);
  const ImVec2 at = hand.window_of(middle), low = hand.grip("sizing grip 1"), high = hand.grip("sizing grip 3");
  EXPECT_NEAR((low.x + high.x) / 2, at.x, 1);
  EXPECT_NEAR((low.y + high.y) / 2, at.y, 1);
  // Five pixels stand between the piece and its frame; here the piece is smaller by the ratio of the two spaces.
  const Point corner = hand.board_at(middle, high);
  const double pixel = 1 / static_cast<double>(hand.window_of(middle, {1, 0}).x - at.x);
  EXPECT_NEAR(corner.x, 10 * growth + 5 * pixel, 0.05);
  EXPECT_NEAR(corner.y, 5 * growth + 5 * pixel, 0.05);
  const double ratio = hand.pull(high, hand.window_of(middle, 0.7 * corner), false, true, 1).ratio;
  EXPECT_NEAR(*hand.inlay().along, 20 * ratio, half_size_grid);
  std::map<int, double> lengths;
  for (const InlayPiece& piece : hand.desk().results.good->prepared->inlays().pieces) {
    double low_x = 1e9, high_x = -1e9;
    for (const CurveSegment& side : piece.piece[0])
      low_x = std::min(low_x, side.a.x), high_x = std::max(high_x, side.a.x);
    lengths[piece.fret] = high_x - low_x;
  }
  EXPECT_NEAR(lengths[3], *hand.inlay().along, 0.01);
  EXPECT_NEAR(lengths[5], growth * *hand.inlay().along, 0.01);
}

TEST(Frames, AreLargeEnoughToHitAtEverySize) {
  for (const double size : {1.0, 1.5}) {
    GripHand hand;
    hand.desk().settings.text_size = size;
    hand.frames(3), hand.wait();
    hand.choose();
    const auto off = static_cast<float>(5.9 * size);  // 12 pixels wide at 100 %
    const ImVec2 from = hand.grip("sizing grip 3");
    hand.pull({from.x + off, from.y + off}, {from.x - 40, from.y + 30}, true);
    EXPECT_EQ(hand.desk().document.undo_name(), "Size the inlay") << size;
    const ImVec2 disc = hand.grip("turning grip");
    hand.pull({disc.x - off, disc.y}, {disc.x + 50, disc.y + 10}, true);
    EXPECT_EQ(hand.desk().document.undo_name(), "Turn the inlay") << size;
  }
}

TEST(Frames, SayByThePointerWhatTheyDo) {
  GripHand hand;
  hand.choose();
  const auto shape_at = [&](ImVec2 at) {
    hand.move(at.x, at.y);
    hand.frames(3);
    return ImGui::GetMouseCursor();
  };
  EXPECT_EQ(shape_at(hand.grip("sizing grip 1")), ImGuiMouseCursor_ResizeNESW);  // low left, seen from above
  EXPECT_EQ(shape_at(hand.grip("sizing grip 2")), ImGuiMouseCursor_ResizeNWSE);
  EXPECT_EQ(shape_at(hand.grip("sizing grip 3")), ImGuiMouseCursor_ResizeNESW);
  EXPECT_GE(shape_at(hand.grip("turning grip")), ImGuiMouseCursor_COUNT) << "one of our own";
  EXPECT_EQ(shape_at(hand.window_of(hand.marker())), ImGuiMouseCursor_Arrow);
}

TEST(Frames, OwnPointersAreMirrorImagesWhereTheyShouldBe) {
  for (const float scale : {1.0f, 1.5f, 2.0f})
    for (const auto& [one, other] : {std::pair<int, int>(ImGuiMouseCursor_ResizeNWSE, ImGuiMouseCursor_ResizeNESW),
                                     {viewer::turning_pointer, viewer::turning_pointer}}) {
      const auto a = *viewer::pointer_picture(one, scale), b = *viewer::pointer_picture(other, scale);
      ASSERT_EQ(a.pixels.size(), 4U * a.side * a.side);
      ASSERT_EQ(a.side, b.side);
      int solid = 0;
      for (int y = 0; y < a.side; ++y)
        for (int x = 0; x < a.side; ++x) {
          const auto at = [&](const viewer::PointerPicture& p, int column) {
            return p.pixels[4 * (y * p.side + column) + 3];
          };
          EXPECT_NEAR(at(a, x), at(b, a.side - 1 - x), 1) << x << ", " << y;  // rounded to a 255th
          solid += at(a, x) == 255;
        }
      EXPECT_GT(solid, a.side * a.side / 20);
      EXPECT_EQ(a.pixels[3], 0) << "a corner is clear";
    }
  EXPECT_FALSE(viewer::pointer_picture(ImGuiMouseCursor_ResizeEW, 1)) << "desktops have it";
}

}  // namespace
}  // namespace sagitta::test
