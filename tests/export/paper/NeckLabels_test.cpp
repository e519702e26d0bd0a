// Names on the neck's sheet: off the rod channel, off the pins, off each other.

#include "paper/NeckLabels.hpp"

#include <gtest/gtest.h>

namespace sagitta::test {
namespace {

bool meet(const Box& a, const Box& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

NeckPlan plan_with(const std::vector<Pin>& pins) {
  NeckPlan plan;
  plan.sides[0] = {{0, -26}, {440, -30}}, plan.sides[1] = {{0, 26}, {440, 30}};
  plan.ledge = {{-6, -26}, {-6, 26}};
  plan.face.nut_line = {{0, -26}, {0, 26}};
  plan.face.pins = pins;
  const Point corners[] = {{5, -3}, {420, -3}, {420, 3}, {5, 3}};
  Loop channel;
  for (std::size_t i = 0; i < 4; ++i) channel.push_back({corners[i], corners[(i + 1) % 4], {}, 0, 0, 0});
  plan.face.channel = channel;
  return plan;
}

// Pins all along the channel, on both sides of it and as near to it as a builder would put them, and one at each end.
TEST(NeckLabels, KeepOffTheChannelThePinsAndEachOther) {
  Board board;
  board.neck.emplace().channel_depth = 9;
  PdfBook ruler("ruler");
  int seen = 0;
  for (const double beside : {4.2, 5.0, 7.0, 12.0, 20.0})
    for (const double x : {2.0, 12.0, 30.0, 45.0, 60.0, 200.0, 415.0, 430.0})
      for (const double other : {-1.0, 1.0}) {
        const std::vector<Pin> pins{{{x, beside}, 1, 2.5}, {{x + 4, other * beside - 0.01}, 1, 2.5}};
        const NeckPlan plan = plan_with(pins);
        const std::vector<NeckLabel> labels = neck_labels(ruler, board, plan);
        ASSERT_EQ(labels.size(), 3u);
        const Box channel{{5, -3}, {420, 3}};
        for (std::size_t i = 0; i < labels.size(); ++i) {
          const Box& box = labels[i].box;
          EXPECT_FALSE(meet(box, channel)) << labels[i].text << " at " << x << ", " << beside;
          EXPECT_NEAR(box.high.x - box.low.x, ruler.width_of(labels[i].text), 1e-9);
          EXPECT_LT(box.low.y, labels[i].at.y);
          for (const Pin& pin : pins)
            EXPECT_FALSE(meet(box, {pin.centre - Point{1, 1}, pin.centre + Point{1, 1}})) << x << ", " << beside;
          for (std::size_t k = i + 1; k < labels.size(); ++k)
            EXPECT_FALSE(meet(box, labels[k].box)) << labels[i].text << " and " << labels[k].text << " at " << x;
          ++seen;
        }
      }
  EXPECT_EQ(seen, 240);
}

}  // namespace
}  // namespace sagitta::test
