// Areas by Steiner's formula: polygon + perimeter r + pi r^2.

#include <gtest/gtest.h>

#include "plane/RoundedPolygon.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;
const RoundedPolygon block{{{-10, -3}, {10, -3}, {10, 3}, {-10, 3}}, 0.5};

TEST(RoundedPolygon, OutlineHasSteinersArea) {
  EXPECT_NEAR(area(outline(block)), 120 + 52 * 0.5 + pi * 0.25, 1e-12);
  EXPECT_NEAR(perimeter(outline(block)), 52 + pi, 1e-13);
  EXPECT_NEAR(area(outline({{{1, 1}}, 2})), 4 * pi, 1e-14);
  EXPECT_NEAR(area(outline({{{1, 1}, {4, 5}}, 2})), 4 * pi + 5 * 4, 1e-13);
  EXPECT_EQ(outline({block.core, 0}).size(), 4u);
}

TEST(RoundedPolygon, OutlineIsHeadToTailAndTangent) {
  const RoundedPolygon slanted = moved(turned(RoundedPolygon{{{0, 0}, {7, -1}, {6, 4}}, 0.3}, 0.77), {30, 2});
  const Loop loop = outline(slanted);
  ASSERT_EQ(loop.size(), 6u);
  for (std::size_t i = 0; i < loop.size(); ++i) {
    const CurveSegment& next = loop[(i + 1) % loop.size()];
    EXPECT_EQ(loop[i].b, next.a);
    EXPECT_NEAR(cross(unit(loop[i].slope(1)), unit(next.slope(0))), 0, 1e-13);
  }
}

TEST(RoundedPolygon, SupportIsTheFurthestPoint) {
  EXPECT_DOUBLE_EQ(support(block, {1, 0}), 10.5);
  EXPECT_DOUBLE_EQ(support(block, {0, -1}), 3.5);
  const Point n = unit({1, 1});
  EXPECT_DOUBLE_EQ(support(block, n), dot(n, {10, 3}) + 0.5);
}

TEST(RoundedPolygon, DistanceBetweenShapes) {
  const RoundedPolygon dot_{{{0, 0}}, 2};
  EXPECT_NEAR(distance(dot_, {{{3, 4}}, 1}), 2, 1e-15);
  EXPECT_NEAR(distance(dot_, moved(block, {0, 10})), 10 - 3 - 0.5 - 2, 1e-15);
  EXPECT_NEAR(distance(block, moved(block, {24, 10})), std::hypot(4, 4) - 1, 1e-14);
  EXPECT_NEAR(distance(block, moved(block, {21, 0})), 0, 1e-14);
  EXPECT_LT(distance(block, dot_), 0);
  EXPECT_LT(distance(RoundedPolygon{block.core, 0}, moved(RoundedPolygon{block.core, 0}, {1, 1})), 0);
  // Only one shape's sides run between them: a corner points at the middle of a side, either way round.
  const RoundedPolygon square{{{-2, -2}, {2, -2}, {2, 2}, {-2, 2}}, 0};
  const RoundedPolygon diamond = moved(turned(square, pi / 4), {0, 2 * std::sqrt(2.0) + 3.5});
  EXPECT_NEAR(distance(RoundedPolygon{block.core, 0}, diamond), 0.5, 1e-14);
  EXPECT_NEAR(distance(diamond, RoundedPolygon{block.core, 0}), 0.5, 1e-14);
  // Two bars laid across each other: no corner of either lies in the other.
  EXPECT_NEAR(distance(block, turned(block, pi / 2)), -13 - 1, 1e-14);
}

TEST(RoundedPolygon, ShrinkingUndoesGrowing) {
  EXPECT_EQ(shrunk(block, 0.25).radius, 0.25);
  EXPECT_EQ(shrunk(block, -0.25).radius, 0.75);
  const RoundedPolygon inner = shrunk(block, 1.5);
  EXPECT_EQ(inner.radius, 0);
  EXPECT_NEAR(area(outline(inner)), 18 * 4, 1e-12);
  EXPECT_TRUE(shrunk(block, 3.6).empty());
  EXPECT_TRUE(shrunk(RoundedPolygon{{{0, 0}}, 1}, 1).empty());
  // A triangle 3-4-5 has an inscribed circle of radius 1; inset by 1/2 it is half as large.
  const RoundedPolygon triangle{{{0, 0}, {4, 0}, {0, 3}}, 0};
  EXPECT_NEAR(area(outline(shrunk(triangle, 0.5))), 6 * 0.25, 1e-13);
  EXPECT_TRUE(shrunk(triangle, 1.0001).empty());
  // A side can vanish while the rest stays: a long shape with a short slanted end.
  const RoundedPolygon wedge{{{0, 0}, {10, 0}, {10, 4}, {0.5, 4}, {0, 3.9}}, 0};
  const RoundedPolygon thin = shrunk(wedge, 1.5);
  EXPECT_NEAR(area(outline(thin)), 7 * 1, 0.3);
  EXPECT_EQ(thin.core.size(), 4u);
}

TEST(RoundedPolygon, MirroredStaysCounterClockwise) {
  const RoundedPolygon shape{{{0, 0}, {7, -1}, {6, 4}}, 0.3};
  EXPECT_NEAR(area(outline(mirrored(shape))), area(outline(shape)), 1e-13);
  EXPECT_DOUBLE_EQ(support(mirrored(shape), {0, 1}), support(shape, {0, -1}));
  EXPECT_EQ(turned(shape, 0), shape);
}

}  // namespace
}  // namespace sagitta
