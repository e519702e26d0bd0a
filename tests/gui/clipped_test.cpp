/// No words are cut off: every panel and dialog at the sizes that are promised, by the letters that are really drawn.

#include <gtest/gtest.h>

#include <cmath>

#include "gui/Change.hpp"
#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

using viewer::Dialog;

struct Size {
  int width, height;
  double text;
};

/// Letters that the last frame drew and that the rectangle they are clipped to cuts at its left or right. Letters above
/// or below it are scrolled away, no more.
int cut_letters() {
  const ImDrawData& data = *ImGui::GetDrawData();
  const ImTextureID letters = ImGui::GetIO().Fonts->TexID;
  int cut = 0;
  for (int l = 0; l < data.CmdListsCount; ++l) {
    const ImDrawList& list = *data.CmdLists[l];
    for (const ImDrawCmd& command : list.CmdBuffer) {
      if (command.TextureId != letters || command.UserCallback) continue;
      const ImVec4 clip = command.ClipRect;
      for (unsigned i = 0; i + 6 <= command.ElemCount; i += 3) {
        const ImDrawIdx* index = list.IdxBuffer.Data + command.IdxOffset + i;
        const ImDrawVert *a = &list.VtxBuffer[static_cast<int>(index[0] + command.VtxOffset)],
                         *b = &list.VtxBuffer[static_cast<int>(index[1] + command.VtxOffset)],
                         *c = &list.VtxBuffer[static_cast<int>(index[2] + command.VtxOffset)];
        // A letter's first triangle: upper left, upper right, lower right, with its own part of the letters' picture.
        const bool letter = a->uv.x < b->uv.x && a->uv.y == b->uv.y && b->uv.x == c->uv.x && b->uv.y < c->uv.y &&
                            a->pos.y == b->pos.y && b->pos.x == c->pos.x;
        if (!letter || c->pos.y <= clip.y || a->pos.y >= clip.w) continue;
        if (a->pos.x < clip.x - 1 || b->pos.x > clip.z + 1) ++cut;
      }
    }
  }
  return cut;
}

class Words : public testing::TestWithParam<Size> {};

TEST_P(Words, AreNowhereCutOff) {
  const Size size = GetParam();
  Hand hand;
  hand.desk().settings.text_size = size.text;
  hand.resize(size.width, size.height);
  for (int group = 1; group <= 9; ++group) {
    hand.open_group(group);
    hand.frames(3);
    EXPECT_EQ(cut_letters(), 0) << "group " << group;
  }
  if (hand.sees("Tabs/Check")) {
    hand.click("Tabs/Check");
    hand.frames(3);
    EXPECT_EQ(cut_letters(), 0) << "checks";
  }
  hand.press(GLFW_KEY_X);
  hand.frames(3);
  EXPECT_EQ(cut_letters(), 0) << "section";
  hand.press(GLFW_KEY_X);
  change(hand, [](Board& b) {
    b.height.emplace().action = {2, 1.6}, b.height->body_step = 3;
    b.neck.emplace().joint_fret = 16;
  });
  for (const auto& [key, mods] : {std::pair{GLFW_KEY_V, 0}, {GLFW_KEY_3, GLFW_MOD_SHIFT}}) {
    hand.press(key, mods);
    hand.frames(3);
    EXPECT_EQ(cut_letters(), 0) << "along the board, key " << key;
    hand.press(key, mods);
  }
  change(hand, [](Board& b) { b.board.thickness += 0.5; });
  hand.press(GLFW_KEY_D, GLFW_MOD_CONTROL);  // with the board on disk: a second one to compare with
  hand.wait();
  hand.frames(3);
  EXPECT_EQ(cut_letters(), 0) << "two boards";
  for (const Dialog dialog : {Dialog::start, Dialog::open, Dialog::save_as, Dialog::send_out, Dialog::compare_with,
                              Dialog::commands, Dialog::way, Dialog::comfort, Dialog::frets, Dialog::sheets,
                              Dialog::rescue, Dialog::drawing, Dialog::compared, Dialog::save_picture}) {
    hand.desk().view.dialog = dialog;
    hand.frames(4);
    EXPECT_EQ(cut_letters(), 0) << "dialog " << static_cast<int>(dialog);
    hand.press(GLFW_KEY_ESCAPE), hand.press(GLFW_KEY_ESCAPE);
    hand.desk().view.dialog = Dialog::none;
    hand.frames(3);
  }
}

INSTANTIATE_TEST_SUITE_P(AtTheSizesPromised, Words,
                         testing::Values(Size{1024, 640, 1}, Size{1280, 800, 1.25}, Size{1280, 800, 1.5},
                                         Size{1920, 1080, 2}));

// The measure itself: at a size that nobody promises, a window narrower than its bar, letters are cut and counted.
TEST(WordsCut, AreCounted) {
  Hand hand;
  hand.wait();
  ASSERT_EQ(cut_letters(), 0);
  hand.desk().settings.text_size = 2.5;
  hand.resize(640, 480);
  EXPECT_GT(cut_letters(), 0);
}

}  // namespace
}  // namespace sagitta::test
