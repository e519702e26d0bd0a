/// The neck under the board: its own wood where its place is sure, nothing where it is not; the board lifted off it.

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>

#include "gui/Change.hpp"
#include "gui/NeckStep.hpp"

namespace sagitta::test {
namespace {

using viewer::NeckAs;

void give_neck(Hand& hand) {
  change(hand, [](Board& b) { b.neck = Neck(), b.neck->file = "neck.step"; });
}

const Layout& layout_of(Hand& hand) { return hand.desk().results.good->prepared->layout(); }
const viewer::Fittings& fittings(Hand& hand) { return *hand.desk().results.good->fittings; }

/// Of a closed mesh, by the divergence theorem.
double volume(const NeckWood& wood) {
  double six = 0;
  for (const auto& t : wood.triangles) {
    const auto &a = wood.points[t[0]], &b = wood.points[t[1]], &c = wood.points[t[2]];
    six += static_cast<double>(a[0]) * (b[1] * c[2] - b[2] * c[1]) +
           static_cast<double>(a[1]) * (b[2] * c[0] - b[0] * c[2]) +
           static_cast<double>(a[2]) * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}

ImVec2 pixel(Hand& hand, viewer::Vec p) {
  const viewer::Seen picture = hand.see("Board/picture");
  const auto at = hand.desk().view.camera.project(p);
  return {picture.low.x + at->x, picture.low.y + at->y};
}

ImVec2 middle(const viewer::Seen& seen) { return {(seen.low.x + seen.high.x) / 2, (seen.low.y + seen.high.y) / 2}; }

// A bar 15 deep with straight sides: its volume is that of a trapezium from above, by the trapezium's rule.
TEST(NeckView, ItsOwnWoodLiesUnderTheBoard) {
  Hand hand;
  const Layout layout = layout_of(hand);
  write_neck(hand.folder() / "neck.step", layout, 0.75, 0.25);
  hand.press(GLFW_KEY_N);
  hand.wait();
  EXPECT_EQ(fittings(hand).neck_as, NeckAs::sketch);
  EXPECT_TRUE(hand.sees("Board/legend 1")) << "that it is a sketch is said";
  const auto sketched = hand.picture();
  give_neck(hand);
  EXPECT_EQ(fittings(hand).neck_as, NeckAs::solid);
  EXPECT_FALSE(hand.sees("Board/legend 1"));
  ASSERT_TRUE(hand.desk().results.good->neck_wood);
  const double wide = layout.half_width(layout.nut_end) + layout.half_width(layout.heel_end) + 1;
  const double whole = 15 * wide * (layout.heel_end - layout.nut_end);
  EXPECT_NEAR(volume(*hand.desk().results.good->neck_wood) / whole, 1, 1e-5) << "the points are rounded to 0.001 mm";
  EXPECT_NEAR(fittings(hand).neck.low.z, -15, 1e-3);
  EXPECT_NEAR(fittings(hand).neck.high.z, 0, 1e-3);
  EXPECT_NEAR(fittings(hand).neck.low.x, layout.nut_end, 1e-3);
  EXPECT_GT(Hand::changed(sketched, hand.picture()), 0.002);
}

TEST(NeckView, TheBoardIsLiftedOffByAHand) {
  Hand hand;
  write_neck(hand.folder() / "neck.step", layout_of(hand), 0, 0);
  give_neck(hand);
  EXPECT_FALSE(hand.sees("Board/lift grip")) << "the neck is not shown";
  hand.press(GLFW_KEY_N);
  hand.wait();
  const ImVec2 grip = middle(hand.see("Board/lift grip"));
  const ImVec2 heel = pixel(hand, {300, -20, -15});
  constexpr float up = 40;
  hand.drag("Board/lift grip", 0, -up);
  hand.wait();
  const float apart = hand.desk().view.apart;
  EXPECT_GT(apart, 5);
  EXPECT_LT(apart, viewer::highest_apart);
  EXPECT_NEAR(middle(hand.see("Board/lift grip")).y, grip.y - up, 2) << "the grip follows the hand";
  EXPECT_NEAR(pixel(hand, {300, -20, -15 - apart}).y, heel.y, 1) << "the neck stays where it was";
  EXPECT_EQ(hand.text("Board/lift grip"), viewer::shown(apart, hand.desk().manner(), 1));
  hand.drag("Board/lift grip", 0, 200);
  EXPECT_EQ(hand.desk().view.apart, 0) << "no lower than the neck";
}

TEST(NeckView, TheBoardIsLiftedOffByItsKeyAndByItsSlider) {
  Hand hand;
  write_neck(hand.folder() / "neck.step", layout_of(hand), 0, 0);
  give_neck(hand);
  hand.press(GLFW_KEY_N, GLFW_MOD_SHIFT);
  hand.wait();
  EXPECT_TRUE(hand.desk().view.neck);
  EXPECT_EQ(hand.desk().view.apart, 30);
  const auto apart = hand.picture();
  hand.press(GLFW_KEY_N, GLFW_MOD_SHIFT);
  hand.wait();
  EXPECT_EQ(hand.desk().view.apart, 0);
  EXPECT_GT(Hand::changed(apart, hand.picture()), 0.01);
  hand.click("Board/Show");
  hand.frames(3);
  hand.drag("Board/Board lifted off it", 20);
  EXPECT_GT(hand.desk().view.apart, 30) << "the middle of the slider is half of the most";
}

// The bar stands out by 0.75 at negative y all along, and is level at positive y.
TEST(NeckView, BothEdgesAreDimensioned) {
  Hand hand;
  write_neck(hand.folder() / "neck.step", layout_of(hand), 0.75, 0);
  give_neck(hand);
  hand.press(GLFW_KEY_N, GLFW_MOD_SHIFT), hand.press(GLFW_KEY_K);
  hand.wait();
  EXPECT_NE(hand.text("Board/neck fit at negative y").find("0.75 mm"), std::string::npos);
  EXPECT_EQ(hand.text("Board/neck fit at positive y").find_first_of("0123456789"), std::string::npos);
  EXPECT_NE(hand.text("Board/legend 1").find("20 times"), std::string::npos) << "how much wider it is drawn";
}

// A bar that ends at 270 of 476 mm: under 95 % of the edges can be compared.
TEST(NeckView, WhereThePlaceIsNotSureNothingIsDrawnAndTheViewSaysWhy) {
  Hand hand;
  write_neck(hand.folder() / "neck.step", layout_of(hand), 0, 0, 270);
  hand.press(GLFW_KEY_N);
  give_neck(hand);
  ASSERT_TRUE(hand.desk().results.good->neck->shape);
  ASSERT_FALSE(is_measured(*hand.desk().results.good->neck->shape));
  EXPECT_EQ(fittings(hand).neck_as, NeckAs::none);
  EXPECT_TRUE(fittings(hand).neck.empty());
  EXPECT_FALSE(hand.desk().results.good->neck_wood);
  EXPECT_TRUE(hand.sees("Board/legend 1"));
  EXPECT_FALSE(hand.sees("Board/lift grip"));
  const std::string unsure = hand.text("Board/legend 1");
  write(hand.folder() / "other.step", "no neck");
  change(hand, [](Board& b) { b.neck->file = "other.step"; });
  EXPECT_EQ(fittings(hand).neck_as, NeckAs::none);
  EXPECT_NE(hand.text("Board/legend 1"), unsure) << "another reason";
  hand.press(GLFW_KEY_N);
  hand.wait();
  EXPECT_FALSE(hand.sees("Board/legend 1"));
}

}  // namespace
}  // namespace sagitta::test
