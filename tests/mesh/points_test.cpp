// Points of a mesh against brute force: the first made over a place within two tolerances of a height is the one.

#include "mesh/Points.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

TEST(Points, AreThoseThatASearchThroughAllFinds) {
  std::mt19937 random(11);
  std::uniform_int_distribution<int> place(-40, 40), height(0, 30);
  Points points;
  std::vector<std::array<float, 3>> all;
  for (int i = 0; i < 20000; ++i) {
    const Point p{0.25 * place(random), 0.5 * place(random)};
    const double z = 0.9 * tolerance::height * height(random);
    const auto same = std::find_if(all.begin(), all.end(), [&](const auto& q) {
      return q[0] == p.x && q[1] == p.y && std::abs(q[2] - z) <= 2 * tolerance::height;
    });
    const auto expected = same - all.begin();
    if (same == all.end()) all.push_back({static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(z)});
    ASSERT_EQ(points.at(p, z), expected);
  }
  EXPECT_EQ(points.points, all);
}

TEST(Points, OverOnePlaceBetweenTwoRise) {
  Points points;
  const Point p{3, -2};
  const int low = points.at(p, 1), high = points.at(p, 5), upper = points.at(p, 4), lower = points.at(p, 2);
  points.at(p, 6);
  points.at({3, 2}, 3);
  std::vector<int> found{77};
  points.add_strictly_between(p, low, high, found);
  EXPECT_EQ(found, (std::vector<int>{77, lower, upper}));
}

/// Both zeros are one place (IEEE 754: they compare equal).
TEST(Points, KnowOneZero) {
  Points points;
  EXPECT_EQ(points.at({0.0, 1}, 2), points.at({-0.0, 1}, 2));
}

}  // namespace
}  // namespace sagitta
