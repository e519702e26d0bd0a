// Polygons that run once east and once west, against the shoelace formula: n - 2 triangles, none flat, that fill it.

#include "mesh/Monotone.hpp"

#include <gtest/gtest.h>

#include "mesh/Orient2d.hpp"

namespace sagitta {
namespace {

double twice_area(const std::vector<Point>& polygon) {
  double sum = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) sum += cross(polygon[i], polygon[(i + 1) % polygon.size()]);
  return sum;
}

void fills(const std::vector<Point>& polygon) {
  const auto triangles = cut_monotone(polygon);
  ASSERT_EQ(triangles.size() + 2, polygon.size());
  double sum = 0;
  for (const auto& [a, b, c] : triangles) {
    EXPECT_GT(orient2d(polygon[a], polygon[b], polygon[c]), 0);
    sum += orient2d(polygon[a], polygon[b], polygon[c]);
  }
  EXPECT_DOUBLE_EQ(sum, twice_area(polygon));
}

TEST(Monotone, FillsABandWithManyPointsOnOneSide) {
  std::vector<Point> band{{0, 0}, {64, 0}, {64, 1}};
  for (int i = 63; i >= 0; --i) band.push_back({static_cast<double>(i), 1});
  fills(band);
}

TEST(Monotone, FillsASawWithUprightFlanks) {
  fills({{0, 0}, {4, -1}, {4, 0}, {8, -1}, {8, 2}, {6, 2}, {6, 0.5}, {3, 2}, {3, 0.25}, {0, 2}});
}

TEST(Monotone, FillsATriangleWithPointsOnItsLongSide) { fills({{0, 0}, {1, -1}, {8, 0}, {6, 0}, {4, 0}, {2, 0}}); }

TEST(Monotone, LeavesAPolygonThatTurnsBackToOthers) {
  EXPECT_TRUE(cut_monotone({{0, 0}, {4, 0}, {2, 1}, {4, 2}, {0, 2}}).empty());
  EXPECT_TRUE(cut_monotone({{0, 0}, {2, 0}, {4, 0}, {1, 0}}).empty());
}

}  // namespace
}  // namespace sagitta
