// How near outlines come and how far they reach, against school geometry.

#include "polygon/Gap.hpp"

#include <gtest/gtest.h>

#include "plane/RoundedPolygon.hpp"

namespace sagitta {
namespace {

constexpr double tight = 1e-12;

TEST(Gap, BetweenDiscsIsTheirCentresDistanceLessBothRadii) {
  const Gap way = gap({circle({0, 0}, 2)}, {circle({6, 8}, 3)});
  EXPECT_NEAR(way.width, 10 - 2 - 3, tight);
  EXPECT_NEAR(distance(way.a, {1.2, 1.6}), 0, tight);
  EXPECT_NEAR(distance(way.b, {6 - 1.8, 8 - 2.4}), 0, tight);
}

TEST(Gap, FromWithinIsWhatTheRadiiLeave) {
  EXPECT_NEAR(gap({circle({0, 0}, 5)}, {circle({0.6, 0.8}, 2)}).width, 5 - 2 - 1, tight);
  EXPECT_NEAR(gap({circle({0, 0}, 5)}, {circle({0, 0}, 2)}).width, 3, tight);  // about one centre
}

TEST(Gap, IsNothingWhereOutlinesCross) {
  EXPECT_EQ(gap({circle({0, 0}, 2)}, {circle({3, 0}, 2)}).width, 0);
  EXPECT_EQ(gap({circle({0, 0}, 2)}, {rectangle({1, -9}, {3, 9})}).width, 0);
  EXPECT_EQ(gap({rectangle({0, 0}, {4, 4})}, {rectangle({3, 3}, {6, 6})}).width, 0);
}

// A convex shape's distance to another is known in closed form (Rounded): the outlines' is the same where they are
// apart.
TEST(Gap, IsThatOfConvexShapesApart) {
  const RoundedPolygon block{{{-4, -2}, {4, -2}, {4, 2}, {-4, 2}}, 0.5};
  for (int i = 0; i < 60; ++i) {
    const double angle = 0.1 * i;
    const RoundedPolygon other =
        moved(turned(RoundedPolygon{{{-2, 0}, {0, -1}, {2, 0}, {0, 1}}, i % 3 * 0.4}, 1.7 * angle),
              (9 + 0.1 * i) * Point{std::cos(angle), std::sin(angle)});
    EXPECT_NEAR(gap({outline(block)}, {outline(other)}).width, distance(block, other), 1e-11) << i;
  }
}

TEST(Gap, IsNotLookedForBeyondWhatIsAsked) {
  EXPECT_EQ(gap({circle({0, 0}, 2)}, {circle({10, 0}, 2)}, 5).width, 1e300);
  EXPECT_NEAR(gap({circle({0, 0}, 2)}, {circle({10, 0}, 2)}, 7).width, 6, tight);
}

TEST(Reach, IsTheSupportOfAConvexShape) {
  const RoundedPolygon shape = turned(RoundedPolygon{{{-4, -2}, {4, -2}, {4, 2}, {-4, 2}}, 0.5}, 0.3);
  for (int i = 0; i < 40; ++i) {
    const Point n{std::cos(0.17 * i), std::sin(0.17 * i)};
    const Reach own = reach({outline(shape)}, n);
    EXPECT_NEAR(own.high, support(shape, n), tight);
    EXPECT_NEAR(own.low, -support(shape, -1.0 * n), tight);
    EXPECT_NEAR(dot(n, own.high_at), own.high, tight);
  }
}

TEST(Holds, WhatLiesInAnOutlineAndNotInItsHole) {
  Loop hole = circle({0, 0}, 1);
  for (CurveSegment& segment : hole) segment = segment.reversed();
  const std::vector<Loop> ring{circle({0, 0}, 3), hole};
  EXPECT_TRUE(holds(ring, {2, 0}));
  EXPECT_FALSE(holds(ring, {0.5, 0}));
  EXPECT_FALSE(holds(ring, {4, 0}));
}

}  // namespace
}  // namespace sagitta
