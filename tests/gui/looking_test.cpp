/// The board under the hand: naming, measuring, cutting, stages, views: asserted on figures and pixels.

#include <gtest/gtest.h>

#include <cmath>

#include "gui/Hand.hpp"
#include "scene/Slice.hpp"

namespace sagitta::test {
namespace {

using viewer::Camera;
using viewer::Vec;

Vec on_surface(Hand& hand, double x, double y) {
  return {static_cast<float>(x), static_cast<float>(y),
          static_cast<float>(hand.desk().results.good->prepared->surface().height(x, y))};
}

/// Where a point of the board stands in the window.
ImVec2 pixel(Hand& hand, Vec p) {
  const viewer::Seen picture = hand.see("Board/picture");
  const auto at = hand.desk().view.camera.project(p);
  return {picture.low.x + at->x, picture.low.y + at->y};
}

TEST(Looking, AClickNamesTheInlayAndOpensItsDecision) {
  Hand hand;
  hand.press(GLFW_KEY_2), hand.press(GLFW_KEY_R);
  hand.wait();
  const Marker& marker = hand.desk().results.good->prepared->layout().markers.front();
  const ImVec2 at = pixel(hand, on_surface(hand, marker.centre.x, marker.centre.y));
  hand.click_at(at.x, at.y);
  EXPECT_EQ(hand.desk().view.named, id_of(marker));
  EXPECT_EQ(hand.desk().view.decision, 5);
  EXPECT_TRUE(hand.sees("Decisions/inlays[0].depth"));
}

TEST(Looking, AClickNamesASlot) {
  Hand hand;
  hand.press(GLFW_KEY_2), hand.press(GLFW_KEY_R);
  const Point middle = hand.desk().results.good->prepared->layout().frets[7].middle;
  for (int i = 0; i < 26; ++i) {
    const ImVec2 at = pixel(hand, on_surface(hand, middle.x, 3));
    hand.wheel(1, at.x, at.y);
  }
  hand.wait();
  const ImVec2 at = pixel(hand, on_surface(hand, middle.x, 3));
  hand.click_at(at.x, at.y);
  EXPECT_EQ(hand.desk().view.named, (FeatureId{.kind = FeatureId::Kind::slot, .fret = 7}));
  EXPECT_EQ(hand.desk().view.decision, 4);
}

TEST(Looking, MeasuringSnapsToCorners) {
  Hand hand;
  hand.press(GLFW_KEY_2), hand.press(GLFW_KEY_R), hand.press(GLFW_KEY_M);
  hand.wait();
  const Layout& l = hand.desk().results.good->prepared->layout();
  const double heel = l.heel_end, half = l.half_width(heel);
  for (const double side : {-1.0, 1.0}) {
    const ImVec2 at = pixel(hand, on_surface(hand, heel - 1.5, side * (half - 1.5)));
    hand.click_at(at.x, at.y);
  }
  ASSERT_EQ(hand.desk().view.picks.size(), 2u);
  EXPECT_EQ(hand.desk().view.picks[0].snap, viewer::Snap::corner);
  const viewer::Measured found = viewer::measure(hand.desk().view.picks[0], hand.desk().view.picks[1]);
  EXPECT_NEAR(found.straight, 2 * half, 1e-3);  // the mesh's points are 32-bit: 1e-4 mm at this size
  EXPECT_EQ(hand.text("Board/measured").substr(0, 5), viewer::shown(2 * half, hand.desk().manner()).substr(0, 5));
}

TEST(Looking, MeasuringSnapsToSlotCentresAndEdgesAndTellsFaces) {
  Hand hand;
  hand.press(GLFW_KEY_2), hand.press(GLFW_KEY_R), hand.press(GLFW_KEY_M);
  hand.wait();
  const Layout& l = hand.desk().results.good->prepared->layout();
  const auto pick = [&](double x, double y) {
    const ImVec2 at = pixel(hand, on_surface(hand, x, y));
    hand.click_at(at.x, at.y);
  };
  // Between the middles of two slots, picked a little beside them: equal temperament, 648 mm.
  pick(l.frets[5].middle.x + 1, 3), pick(l.frets[12].middle.x - 1, 3);
  ASSERT_EQ(hand.desk().view.picks.size(), 2u);
  EXPECT_EQ(hand.desk().view.picks[0].snap, viewer::Snap::slot_centre);
  EXPECT_NEAR(viewer::measure(hand.desk().view.picks[0], hand.desk().view.picks[1]).along,
              648 * (std::pow(2, -5 / 12.0) - 0.5), 1e-3);  // 32-bit points
  // From edge to edge across a fret space without a marker, away from any corner.
  const double x = (l.frets[1].middle.x + l.frets[2].middle.x) / 2, half = l.half_width(x);
  pick(x, -half + 1), pick(x, half - 1);
  EXPECT_EQ(hand.desk().view.picks[0].snap, viewer::Snap::edge);
  EXPECT_EQ(hand.desk().view.picks[1].snap, viewer::Snap::edge);
  EXPECT_NEAR(viewer::measure(hand.desk().view.picks[0], hand.desk().view.picks[1]).across, 2 * half, 0.05);
  // Two parallel faces: straight down 6 mm between them, 10 mm apart along.
  const viewer::Picked top{viewer::Snap::face, {0, 0, 6}, {0, 0, 1}, "top"};
  const viewer::Picked below{viewer::Snap::face, {10, 0, 0}, {0, 0, -1}, "glue face"};
  EXPECT_NEAR(viewer::measure(top, below).faces.value_or(0), 6, 1e-6);
}

TEST(Looking, TheCuttingPlaneIsDraggedAlongTheBoard) {
  Hand hand;
  hand.press(GLFW_KEY_X);
  hand.wait();
  const double before = hand.desk().view.cut;
  const std::string radius = hand.text("Board/section Radius");
  hand.drag("Board/cutting plane", 120, -30);
  hand.wait();
  EXPECT_GT(hand.desk().view.cut, before + 20);
  EXPECT_NE(hand.text("Board/section Radius"), radius);
}

TEST(Looking, TheSectionAtASlotShowsItsDepth) {
  Hand hand;
  hand.press(GLFW_KEY_RIGHT_BRACKET);
  hand.wait();
  EXPECT_NE(hand.text("Board/section At").find("slot"), std::string::npos);
  const auto slice =
      viewer::slice_of(*hand.desk().results.at(hand.desk().view.stage), hand.desk().results.good->prepared->layout(),
                       hand.desk().results.good->prepared->surface(), hand.desk().view.cut);
  // Arc floor: everywhere as deep as the decision says; the picture's mesh may be off by its deviation.
  EXPECT_NEAR(slice.cut_depth.value_or(0), slot_depth(hand.board()),
              2 * hand.desk().results.at(hand.desk().view.stage)->deviation);
  EXPECT_EQ(hand.text("Board/section Cut depth"), viewer::shown(*slice.cut_depth, hand.desk().manner(), 2));
}

TEST(Looking, TheSectionIsDimensionedAndReadUnderThePointer) {
  Hand hand;
  for (int i = 0; i < 5; ++i) hand.press(GLFW_KEY_RIGHT_BRACKET);
  hand.wait();
  std::string all;
  for (int i = 1; hand.sees("Board/section label " + std::to_string(i)); ++i)
    all += hand.text("Board/section label " + std::to_string(i)) + "; ";
  const double x = hand.desk().view.cut;
  const Surface& s = hand.desk().results.good->prepared->surface();
  // What is left below a slot with an arc floor: the surface less the depth, and at the edge the same.
  const double depth = slot_depth(hand.board()),
               edge = s.height(x, hand.desk().results.good->prepared->layout().half_width(x));
  const auto has = [&](double mm, const char* word) {
    for (const double off : {-0.01, 0.0, 0.01})  // the picture's mesh
      if (all.find(viewer::shown(mm + off, hand.desk().manner(), 2) + word) != all.npos) return true;
    return false;
  };
  EXPECT_TRUE(has(depth, " deep")) << all;
  EXPECT_TRUE(has(s.height(x, 0) - depth, " left")) << all;
  EXPECT_TRUE(has(edge - depth, ";")) << all;
  hand.press(GLFW_KEY_G);
  hand.wait();
  EXPECT_NE(hand.text("Board/section enlarged").find("times larger"), std::string::npos);
  const viewer::Seen panel = hand.see("Board");
  for (float at = panel.low.x + 0.5f * (panel.high.x - panel.low.x);
       at < panel.high.x && !hand.sees("Board/section reading"); at += 20) {
    hand.move(at, panel.high.y - 40);
    hand.frames(3);
  }
  EXPECT_NE(hand.text("Board/section reading").find("below the surface"), std::string::npos);
}

TEST(Looking, TheSectionsEdgesAreTheSurfaces) {
  Hand hand;
  const Layout& l = hand.desk().results.good->prepared->layout();
  const Surface& s = hand.desk().results.good->prepared->surface();
  for (const double x : {40.0, 123.4, 300.0, 440.0}) {
    const auto slice = viewer::slice_of(*hand.desk().results.at(hand.desk().view.stage), l, s, x);
    EXPECT_NEAR(slice.bass_edge, s.height(x, l.half_width(x)),
                2 * hand.desk().results.at(hand.desk().view.stage)->deviation)
        << x;
    EXPECT_NEAR(slice.high_y - slice.low_y, 2 * l.half_width(x),
                2 * hand.desk().results.at(hand.desk().view.stage)->deviation)
        << x;
  }
}

TEST(Looking, EveryStageHasItsSmallPicture) {
  Hand hand;
  for (const char* name : {"Blank", "Pockets cut", "Radius cut", "Slots cut", "Outline cut"})
    EXPECT_EQ(hand.text(std::string("Stages/") + name), "drawn") << name;
}

TEST(Looking, AStagePictureShowsThatStage) {
  Hand hand;
  const auto board = hand.picture();
  hand.click("Stages/Blank");
  const auto blank = hand.picture();
  EXPECT_EQ(hand.desk().view.stage, Stage::blank);
  EXPECT_GT(Hand::changed(board, blank), 0.01);
  hand.press(GLFW_KEY_PAGE_DOWN);
  EXPECT_EQ(hand.desk().view.stage, Stage::pocketed);
  for (const char* name : {"Blank", "Pockets cut", "Radius cut", "Slots cut", "Outline cut"})
    EXPECT_TRUE(hand.sees(std::string("Stages/") + name)) << name;
}

TEST(Looking, WireStringsAndHeightChangeThePicture) {
  Hand hand;
  auto before = hand.picture();
  for (const int key : {GLFW_KEY_R, GLFW_KEY_T, GLFW_KEY_I, GLFW_KEY_N, GLFW_KEY_E, GLFW_KEY_H}) {
    hand.press(key);
    const auto after = hand.picture();
    EXPECT_GT(Hand::changed(before, after), 0.0003) << static_cast<char>(key);
    before = after;
  }
}

TEST(Looking, ZoomKeepsThePointUnderThePointer) {
  Hand hand;
  const Vec p = on_surface(hand, 350, 5);
  const ImVec2 before = pixel(hand, p);
  hand.press(GLFW_KEY_P);
  const ImVec2 there = pixel(hand, p);
  hand.wheel(3, there.x, there.y);
  const ImVec2 after = pixel(hand, p);
  EXPECT_NEAR(after.x, there.x, 0.6);  // pointer positions are whole steps of a 32-bit float; well under a pixel
  EXPECT_NEAR(after.y, there.y, 0.6);
  EXPECT_NE(before.x, there.x);
}

TEST(Looking, StandardViewsFaceTheBoard) {
  Hand hand;
  hand.press(GLFW_KEY_2);
  EXPECT_NEAR(hand.desk().view.camera.back().z, 1, 1e-6);
  hand.press(GLFW_KEY_3);
  EXPECT_NEAR(hand.desk().view.camera.back().y, -1, 1e-6);
  hand.press(GLFW_KEY_5);
  EXPECT_NEAR(hand.desk().view.camera.back().x, -1, 1e-6);
  const Camera& camera = hand.desk().view.camera;
  hand.wait();
  hand.press(GLFW_KEY_F);
  hand.wait();
  const Vec low = hand.desk().results.at(hand.desk().view.stage)->body.low,
            high = hand.desk().results.at(hand.desk().view.stage)->body.high;
  for (const Vec corner : {low, high}) {
    const auto at = camera.project(corner);
    ASSERT_TRUE(at);
    EXPECT_TRUE(at->x >= 0 && at->x <= camera.width && at->y >= 0 && at->y <= camera.height);
  }
}

TEST(Looking, DraggingTurnsAndShiftDraggingMoves) {
  Hand hand;
  const Camera before = hand.desk().view.camera;
  hand.drag("Board/picture", 80, 20);
  EXPECT_NE(hand.desk().view.camera.turn, before.turn);
  EXPECT_EQ(hand.desk().view.camera.target, before.target);
}

TEST(Looking, TheDecisionInHandIsDrawnOnTheBoard) {
  Hand hand;
  hand.open_group(3);
  hand.choose("Decisions/form.width", "two widths");
  hand.enter("Decisions/board.nut_width", "1-11/16 in");
  hand.wait();
  EXPECT_EQ(hand.text("Board/dimension").substr(0, 5), "42.86");  // 1.6875 x 25.4 = 42.8625
}

}  // namespace
}  // namespace sagitta::test
