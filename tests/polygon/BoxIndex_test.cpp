#include "polygon/BoxIndex.hpp"

#include <gtest/gtest.h>

#include <random>

namespace sagitta {
namespace {

std::vector<int> one_by_one(const std::vector<Box>& boxes, const Box& box, double margin) {
  std::vector<int> found;
  for (std::size_t i = 0; i < boxes.size(); ++i)
    if (boxes[i].overlaps(box, margin)) found.push_back(static_cast<int>(i));
  return found;
}

TEST(BoxIndex, OfNothingFindsNothing) {
  EXPECT_TRUE(BoxIndex().near({{-1, -1}, {1, 1}}).empty());
  EXPECT_TRUE(BoxIndex(std::vector<Box>{}).near({{-1, -1}, {1, 1}}).empty());
}

// Against looking at each box, for one box to a thousand of all sizes, long and endless ones among them.
TEST(BoxIndex, FindsWhatLookingAtEachFinds) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> place(-100, 100), size(0, 10);
  for (const int count : {1, 2, 7, 8, 9, 64, 65, 1000}) {
    std::vector<Box> boxes;
    for (int i = 0; i < count; ++i) {
      const Point low{place(random), place(random)};
      boxes.push_back({low, low + Point{size(random), i % 50 == 0 ? 200 : size(random)}});
      if (i % 97 == 0) boxes.back().low.y = -1e300, boxes.back().high.y = 1e300;
    }
    const BoxIndex index(boxes);
    for (int i = 0; i < 200; ++i) {
      const Point low{place(random), place(random)};
      const Box box{low, i % 3 == 0 ? low : low + Point{size(random), i % 3 == 1 ? 1e300 : size(random)}};
      EXPECT_EQ(index.near(box), one_by_one(boxes, box, 0));
      EXPECT_EQ(index.near(box, 2), one_by_one(boxes, box, 2));
    }
  }
}

TEST(BoxIndex, CountsWhatOnlyTouches) {
  const BoxIndex index(std::vector<Box>{{{0, 0}, {1, 1}}, {{2, 0}, {3, 1}}});
  EXPECT_EQ(index.near({{1, 1}, {2, 2}}), (std::vector<int>{0, 1}));
  EXPECT_EQ(index.near({{1.5, 0.5}, {1.5, 0.5}}, 0.25), (std::vector<int>{}));
}

}  // namespace
}  // namespace sagitta
