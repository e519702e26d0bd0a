/// Select, then edit: a click selects and shows the row, menus of the right button, one piece taken out of an inlay.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "gui/Change.hpp"
#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

using Kind = FeatureId::Kind;

/// Heron-six from above with nothing on its wood but its inlays.
struct Selector : Hand {
  Selector() {
    press(GLFW_KEY_2), press(GLFW_KEY_R);
    wait();
  }
  const Layout& layout() { return desk().results.good->prepared->layout(); }
  ImVec2 pixel(double x, double y) {
    const viewer::Seen picture = see("Board/picture");
    const auto z = static_cast<float>(desk().results.good->prepared->surface().height(x, y));
    const auto at = desk().view.camera.project({static_cast<float>(x), static_cast<float>(y), z});
    return {picture.low.x + at->x, picture.low.y + at->y};
  }
  ImVec2 pixel(Point p) { return pixel(p.x, p.y); }
  /// Where a place of the board lies in the plan above the picture: the plan keeps the board's proportions, so that
  /// it is found from the outline's box alone.
  ImVec2 in_plan(Point p) {
    const viewer::Seen plan = see("Board/plan");
    Box box;
    for (const CurveSegment& s : layout().outline) box.add(s.a);
    const double scale = std::min((plan.high.x - plan.low.x - 28.0f) / (box.high.x - box.low.x),
                                  (plan.high.y - plan.low.y - 18.0f) / (box.high.y - box.low.y));
    return {static_cast<float>((plan.low.x + plan.high.x) / 2 + scale * (p.x - (box.low.x + box.high.x) / 2)),
            static_cast<float>((plan.low.y + plan.high.y) / 2 - scale * (p.y - (box.low.y + box.high.y) / 2))};
  }
  void click_at(ImVec2 at) { Hand::click_at(at.x, at.y); }
  void right_click_at(ImVec2 at) { Hand::right_click_at(at.x, at.y); }
};

TEST(Selecting, AClickShowsTheRowAndTypesNothing) {
  Selector hand;
  const Marker marker = hand.layout().markers.front();
  const Board before = hand.board();
  hand.click_at(hand.pixel(marker.centre));
  hand.frames(4);
  EXPECT_EQ(hand.desk().view.named, id_of(marker));
  EXPECT_TRUE(hand.see("Decisions/inlays[0].depth").in_view);
  EXPECT_FALSE(hand.desk().forms.rows.typing());
  hand.type("9");
  EXPECT_EQ(hand.board(), before);
  hand.press(GLFW_KEY_X);  // keys are commands still
  EXPECT_TRUE(hand.desk().view.cutting);
}

TEST(Selecting, EnterTypesOverTheRowThatAClickShows) {
  Selector hand;
  hand.click_at(hand.pixel(hand.layout().markers.front().centre));
  hand.frames(4);
  hand.press(GLFW_KEY_ENTER);
  hand.frames(3);
  ASSERT_TRUE(hand.desk().forms.rows.typing());
  hand.type("1.9");
  hand.press(GLFW_KEY_ENTER);
  EXPECT_DOUBLE_EQ(hand.board().inlays[0].depth, 1.9);
}

TEST(Selecting, EndsWithTheDocument) {
  Selector hand;
  hand.click_at(hand.pixel(hand.layout().markers.front().centre));
  ASSERT_TRUE(hand.desk().view.chosen);
  hand.press(GLFW_KEY_N, GLFW_MOD_CONTROL);
  hand.frames(3);
  hand.click("New board/curlew-seven-fan");
  hand.wait();
  EXPECT_FALSE(hand.desk().view.chosen);
  EXPECT_EQ(hand.desk().view.named, FeatureId());
  EXPECT_FALSE(hand.sees("Board/pieces together"));
}

TEST(Selecting, ThePlanAndThePictureSelectTheSame) {
  Selector hand;
  const Marker marker = hand.layout().markers[2];
  hand.click_at(hand.in_plan(marker.centre));
  EXPECT_EQ(hand.desk().view.named, id_of(marker));
  ASSERT_TRUE(hand.desk().view.chosen);
  EXPECT_EQ(hand.desk().view.chosen->fret, marker.fret);
  const Slot slot = hand.layout().slots[6];
  hand.click_at(hand.in_plan({(slot.bass_end.x + slot.treble_end.x) / 2, 8}));
  EXPECT_EQ(hand.desk().view.named, id_of(slot));
  EXPECT_EQ(hand.desk().view.decision, 4);
  const viewer::Seen plan = hand.see("Board/plan");
  hand.click_at(ImVec2(plan.low.x + 4, plan.low.y + 3));
  EXPECT_EQ(hand.desk().view.named, FeatureId());
}

TEST(Selecting, OnePieceIsTakenOutOfItsInlayAndUndoJoinsItAgain) {
  Selector hand;
  const Board before = hand.board();
  const std::vector<int> frets = before.inlays[0].frets;
  ASSERT_GT(frets.size(), 2u);
  const std::vector<Marker> markers = hand.layout().markers;
  const Marker marker =
      *std::find_if(markers.begin(), markers.end(), [&](const Marker& m) { return m.fret == frets[1]; });
  hand.click_at(hand.pixel(marker.centre));
  hand.wait();
  const std::size_t pieces = frets.size() + 2 * before.inlays[0].double_frets.size();
  EXPECT_EQ(hand.text("Board/pieces together"), std::to_string(pieces));
  hand.click("Board/This piece alone");
  hand.wait();
  ASSERT_EQ(hand.board().inlays.size(), before.inlays.size() + 1);
  EXPECT_EQ(hand.board().inlays.back().frets, std::vector<int>{frets[1]});
  EXPECT_EQ(std::count(hand.board().inlays[0].frets.begin(), hand.board().inlays[0].frets.end(), frets[1]), 0);
  EXPECT_EQ(hand.text("Board/pieces together"), "1");
  // It alone moves with the hand now.
  const ImVec2 at = hand.pixel(marker.centre);
  hand.drag_from(at.x, at.y, 30, 0);
  hand.wait();
  EXPECT_GT(hand.board().inlays.back().shift_along, 3);
  EXPECT_EQ(hand.board().inlays[0].shift_along, before.inlays[0].shift_along);
  // The wood is as it was before the move: the same pockets at the same places.
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  hand.wait();
  EXPECT_EQ(hand.layout().markers.size(), markers.size());
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_EQ(hand.board(), before);
}

TEST(Selecting, TheRightButtonOpensTheMenuOfWhatLiesThere) {
  Selector hand;
  const Marker marker = hand.layout().markers.front();
  hand.right_click_at(hand.pixel(marker.centre));
  EXPECT_EQ(hand.desk().view.named, id_of(marker));
  EXPECT_TRUE(hand.sees("Board/Remove the inlay"));
  EXPECT_FALSE(hand.sees("Board/Places of the slots"));
  hand.press(GLFW_KEY_X);
  EXPECT_FALSE(hand.desk().view.cutting) << "keys are the menu's while it is open";
  const std::size_t inlays = hand.board().inlays.size();
  hand.click("Board/Remove the inlay");
  EXPECT_EQ(hand.board().inlays.size(), inlays - 1);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  hand.wait();
  const Slot slot = hand.layout().slots[4];
  hand.desk().view.camera.distance /= 4;
  hand.desk().view.camera.target = {static_cast<float>(slot.bass_end.x), 0, 6};
  hand.frames(3), hand.wait();
  hand.right_click_at(hand.pixel((slot.bass_end.x + slot.treble_end.x) / 2, 4));
  EXPECT_EQ(hand.desk().view.named.kind, Kind::slot);
  hand.click("Board/Cut the board across here");
  EXPECT_TRUE(hand.desk().view.cutting);
  EXPECT_NEAR(hand.desk().view.cut, hand.layout().frets[static_cast<std::size_t>(slot.fret)].middle.x, 1e-9);
}

TEST(Selecting, ADragWithTheRightButtonOpensNoMenu) {
  Selector hand;
  const viewer::Vec before = hand.desk().view.camera.target;
  const ImVec2 at = hand.pixel(hand.layout().markers.front().centre);
  hand.right_drag(at.x, at.y, 60, 20);
  EXPECT_FALSE(hand.sees("Board/Fit the board to the picture"));
  EXPECT_GT(std::abs(hand.desk().view.camera.target.x - before.x), 5);
}

TEST(Selecting, FindingsAndStagesHaveMenus) {
  Selector hand;
  change(hand, [](Board& b) { b.slots.depth = 1.2; });
  hand.right_click("Checks/finding 1");
  hand.wait();
  ASSERT_TRUE(hand.desk().view.marked);
  hand.click("Checks/Open its decision");
  hand.frames(3);
  EXPECT_EQ(hand.desk().view.decision, 4);
  hand.press(GLFW_KEY_ESCAPE), hand.press(GLFW_KEY_ESCAPE);
  hand.right_click("Stages/Slots cut");
  EXPECT_EQ(hand.desk().view.stage, Stage::slotted);
  hand.click("Stages/Cut the board across");
  hand.frames(3);
  EXPECT_TRUE(hand.desk().view.cutting);
}

}  // namespace
}  // namespace sagitta::test
