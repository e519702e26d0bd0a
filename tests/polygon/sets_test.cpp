// Disjoint sets and groups of boxes, against what pairs say.

#include <gtest/gtest.h>

#include <algorithm>

#include "polygon/Clusters.hpp"
#include "polygon/DisjointSets.hpp"

namespace sagitta {
namespace {

TEST(DisjointSets, AreKnownByTheirLeastMember) {
  DisjointSets groups(8);
  for (int i = 0; i < 8; ++i) EXPECT_EQ(groups.of(i), i);
  groups.join(7, 5);
  groups.join(3, 7);
  groups.join(2, 6);
  groups.join(6, 2);
  groups.join(4, 4);
  EXPECT_EQ(groups.of(7), 3);
  EXPECT_EQ(groups.of(5), 3);
  EXPECT_EQ(groups.of(6), 2);
  EXPECT_EQ(groups.of(4), 4);
  groups.join(5, 6);
  for (const int i : {2, 3, 5, 6, 7}) EXPECT_EQ(groups.of(i), 2);
  for (const int i : {0, 1, 4}) EXPECT_EQ(groups.of(i), i);
}

TEST(DisjointSets, HangTogetherHoweverTheyAreJoined) {
  const int n = 1000;
  DisjointSets up(n), down(n);
  for (int i = 0; i + 2 < n; ++i) up.join(i, i + 2), down.join(n - 1 - i, n - 3 - i);
  for (int i = 0; i < n; ++i) {
    EXPECT_EQ(up.of(i), i % 2);
    EXPECT_EQ(down.of(i), i % 2);
  }
}

/// The same groups by joining every pair that is near, again and again.
std::vector<std::vector<int>> by_pairs(const std::vector<Box>& boxes, double apart) {
  std::vector<int> own(boxes.size());
  for (std::size_t i = 0; i < boxes.size(); ++i) own[i] = static_cast<int>(i);
  for (bool changed = true; changed;) {
    changed = false;
    for (std::size_t i = 0; i < boxes.size(); ++i)
      for (std::size_t k = 0; k < boxes.size(); ++k)
        if (boxes[i].low.x <= boxes[k].high.x + apart && boxes[k].low.x <= boxes[i].high.x + apart &&
            boxes[i].low.y <= boxes[k].high.y + apart && boxes[k].low.y <= boxes[i].high.y + apart && own[k] < own[i])
          own[i] = own[k], changed = true;
  }
  std::vector<std::vector<int>> found(boxes.size());
  for (std::size_t i = 0; i < boxes.size(); ++i) found[own[i]].push_back(static_cast<int>(i));
  std::erase_if(found, [](const auto& group) { return group.empty(); });
  return found;
}

TEST(Clusters, AreThoseThatPairsGive) {
  unsigned seed = 3;
  const auto next = [&] { return static_cast<double>((seed = seed * 1664525 + 1013904223) >> 8) / (1 << 24); };
  for (const double apart : {0.0, 0.5, 2.0})
    for (int trial = 0; trial < 20; ++trial) {
      std::vector<Box> boxes;
      for (int i = 0; i < 40; ++i) {
        const Point low{30 * next(), 30 * next()};
        boxes.push_back({low, low + Point{3 * next(), 3 * next()}});
      }
      EXPECT_EQ(clusters(boxes, apart), by_pairs(boxes, apart)) << apart << ' ' << trial;
    }
  EXPECT_TRUE(clusters({}, 1).empty());
}

}  // namespace
}  // namespace sagitta
