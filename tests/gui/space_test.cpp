/// Room for a long thin thing: how much of the window the board and its section fill, and that words stand beside them.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "gui/Change.hpp"
#include "gui/Hand.hpp"
#include "scene/Slice.hpp"

namespace sagitta::test {
namespace {

/// From the leftmost to the rightmost point of the wood in the window, as a share of its picture's width.
double share_of_width(Hand& hand) {
  const auto& body = hand.desk().results.at(hand.desk().view.stage)->body;
  float low = 1e9f, high = -1e9f;
  for (const viewer::RenderVertex& v : body.vertices)
    if (const auto at = hand.desk().view.camera.project(v.position))
      low = std::min(low, at->x), high = std::max(high, at->x);
  EXPECT_GE(low, 0);
  EXPECT_LE(high, hand.desk().view.camera.width);
  return static_cast<double>((high - low) / hand.desk().view.camera.width);
}

TEST(Space, TheBoardFillsThePicturesWidth) {
  for (const char* preset : {"heron-six", "curlew-seven-fan", "knot-mandolin", "tern-inch-left"}) {
    Hand hand({preset});
    hand.wait();
    EXPECT_GE(share_of_width(hand), 0.85) << preset;
    hand.desk().ask("view above");
    hand.frames(3), hand.wait();
    EXPECT_GE(share_of_width(hand), 0.85) << preset;
  }
}

TEST(Space, TheSectionIsWideAndHasHalfTheHeight) {
  for (const char* preset : {"heron-six", "knot-mandolin"}) {
    Hand hand({preset});
    hand.press(GLFW_KEY_X);
    hand.wait();
    const viewer::Seen drawing = hand.see("Board/section drawing"), board = hand.see("Board"),
                       picture = hand.see("Board/picture");
    EXPECT_GE(drawing.high.x - drawing.low.x, 300) << preset;
    EXPECT_GE(board.high.y - picture.high.y, picture.high.y - picture.low.y - 1) << preset;
    for (const char* figure : {"At", "Radius", "Bass edge", "Treble edge", "Cut depth"})
      EXPECT_TRUE(hand.see(std::string("Board/section ") + figure).in_view) << figure;
  }
}

// One number for one thing: what the figure says is what the drawing says.
TEST(Space, WhatIsLeftBelowACutIsOneNumber) {
  Hand hand;
  const auto drawn = [&](const std::string& words) {
    for (int i = 1; hand.sees("Board/section label " + std::to_string(i)); ++i)
      if (hand.text("Board/section label " + std::to_string(i)) == words) return true;
    return false;
  };
  hand.press(GLFW_KEY_RIGHT_BRACKET);
  hand.wait();
  EXPECT_TRUE(drawn(hand.text("Board/section Left below") + " left"));
  EXPECT_FALSE(hand.sees("Board/section Thickness"));
  // In the middle of a space without an inlay: the playing surface's own height on the centre line.
  const auto& frets = hand.desk().results.good->prepared->layout().frets;
  hand.desk().view.cut = (frets[1].middle.x + frets[2].middle.x) / 2;
  hand.wait();
  const Surface& surface = hand.desk().results.good->prepared->surface();
  EXPECT_EQ(hand.text("Board/section Thickness"),
            viewer::shown(surface.height(hand.desk().view.cut, 0), hand.desk().manner(), 2));
  EXPECT_TRUE(drawn(hand.text("Board/section Thickness") + " thick"));
}

/// Whether a point of the window lies over the wood's top, seen from where the camera is.
bool over_wood(Hand& hand, float x, float y) {
  const viewer::Seen picture = hand.see("Board/picture");
  const PreparedBoard& prepared = *hand.desk().results.good->prepared;
  const viewer::Ray ray = hand.desk().view.camera.ray({x - picture.low.x, y - picture.low.y});
  const double far =
      (prepared.surface().thickness - static_cast<double>(ray.from.z)) / static_cast<double>(ray.along.z);
  const Point place{static_cast<double>(ray.from.x) + far * static_cast<double>(ray.along.x),
                    static_cast<double>(ray.from.y) + far * static_cast<double>(ray.along.y)};
  return far > 0 && winding(prepared.layout().outline, place) != 0;
}

TEST(Space, WordsStandBesideTheBoardThatTheyMeasure) {
  Hand hand;
  int seen = 0;
  for (int group = 1; group <= 9; ++group) {
    hand.open_group(group);
    hand.frames(3);
    for (int i = 1; hand.sees("Board/label " + std::to_string(i)); ++i) {
      const viewer::Seen label = hand.see("Board/label " + std::to_string(i));
      ++seen;
      bool covers = false;
      for (int a = 0; a <= 8; ++a)
        for (int b = 0; b <= 4; ++b)
          covers = covers || over_wood(hand, label.low.x + (label.high.x - label.low.x) * static_cast<float>(a) / 8,
                                       label.low.y + (label.high.y - label.low.y) * static_cast<float>(b) / 4);
      EXPECT_FALSE(covers) << "group " << group << ": " << label.text;
    }
  }
  EXPECT_GT(seen, 12);
}

// A cylinder of 300 mm, 40 mm wide at the nut and 56 at the heel, 6 mm thick: its edges lie R - sqrt(R^2 - w^2 / 4)
// below the crown, most at the heel.
TEST(Space, TheLegendOfHeightsIsTheSurfacesOwnRange) {
  Hand hand;
  change(hand, [](Board& b) {
    b.surface = {Profile::single, 300, {}, HeelAt::heel, {}, {}};
    b.board.thickness = 6;
    b.board.edge_margin.reset(), b.board.nut_margin.reset(), b.board.heel_margin.reset();
    b.board.nut_width = 44, b.board.heel_width = 56;
  });
  hand.press(GLFW_KEY_H);
  hand.wait();
  const double low = 6 - (300 - std::sqrt(300.0 * 300 - 28 * 28));
  const viewer::Manner manner = hand.desk().manner();
  EXPECT_EQ(hand.text("Board/height legend"), viewer::shown(low, manner, 2) + " " + viewer::shown(6, manner, 2));
}

}  // namespace
}  // namespace sagitta::test
