/// Materials in the picture: each is told from every other by its mean colour, its texture or its gloss.

#include <gtest/gtest.h>

#include <cmath>

#include "gui/Change.hpp"
#include "gui/GripHand.hpp"

namespace sagitta::test {
namespace {

/// What a patch of the picture looks like: mean colour, how much single pixels depart from it, and how much the mean
/// changes when it is seen from another side. Levels of 255.
struct Patch {
  double red = 0, green = 0, blue = 0, texture = 0, gloss = 0;
};

/// A square of pixels about the middle of the picture.
Patch patch(Hand& hand) {
  constexpr int half = 14;
  const auto rows = hand.picture();
  const int width = static_cast<int>(hand.desk().view.camera.width), height = static_cast<int>(rows.size() / 3) / width;
  Patch sum;
  std::vector<double> light;
  for (int y = height / 2 - half; y <= height / 2 + half; ++y)
    for (int x = width / 2 - half; x <= width / 2 + half; ++x) {
      const std::size_t at =
          3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x));
      sum.red += rows[at], sum.green += rows[at + 1], sum.blue += rows[at + 2];
      light.push_back((rows[at] + rows[at + 1] + rows[at + 2]) / 3.0);
    }
  const double count = static_cast<double>(light.size());
  sum.red /= count, sum.green /= count, sum.blue /= count;
  const double mean = (sum.red + sum.green + sum.blue) / 3;
  for (const double l : light) sum.texture += std::abs(l - mean) / count;
  return sum;
}

double mean_of(const Patch& p) { return (p.red + p.green + p.blue) / 3; }

TEST(Materials, AreToldFromEachOther) {
  GripHand hand;
  const std::vector<std::string> names{"ebony", "rosewood", "maple", "shell", "bone", "brass", "acrylic", "phenolic"};
  std::vector<Patch> patches;
  for (const std::string& name : names) {
    change(hand, [&](Board& b) {
      Inlay block;
      block.shape = InlayShape::block, block.along = 24, block.across = 30, block.depth = 1.5, block.frets = {2};
      block.material = name;
      b.inlays = {block};
    });
    hand.look("view above");
    hand.near(hand.marker());
    hand.desk().view.named = {}, hand.desk().view.chosen.reset();
    Patch seen = patch(hand);
    hand.desk().view.camera = hand.desk().view.camera.orbited(0, -120);
    hand.frames(2);
    const Patch from_the_side = patch(hand);
    seen.gloss = mean_of(from_the_side) - mean_of(seen);
    std::printf("%-9s %5.0f %5.0f %5.0f  texture %5.1f  gloss %6.1f\n", name.c_str(), seen.red, seen.green, seen.blue,
                seen.texture, seen.gloss);
    patches.push_back(seen);
  }
  // None is so bright that its colour is lost: 255 is where the screen ends.
  for (std::size_t i = 0; i < patches.size(); ++i)
    EXPECT_LT(std::max({patches[i].red, patches[i].green, patches[i].blue}), 252) << names[i];
  for (std::size_t i = 0; i < patches.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const Patch &a = patches[i], &b = patches[j];
      const double colour = std::max({std::abs(a.red - b.red), std::abs(a.green - b.green), std::abs(a.blue - b.blue)});
      const bool apart = colour >= 12 || std::abs(a.texture - b.texture) >= 2 || std::abs(a.gloss - b.gloss) >= 8;
      EXPECT_TRUE(apart) << names[i] << " and " << names[j];
    }
}

}  // namespace
}  // namespace sagitta::test
