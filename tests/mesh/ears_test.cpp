// Triangulations against closed forms: a simple polygon of n corners has n - 2 triangles, whose areas add up to the
// shoelace formula's; a Delaunay pair's opposite angles add up to at most two right ones (de Berg, Cheong, van Kreveld,
// Overmars, "Computational Geometry", chapters 3 and 9).

#include "mesh/Ears.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <numbers>

#include "mesh/Delaunay.hpp"
#include "mesh/Orient2d.hpp"

namespace sagitta {
namespace {

using Triangles = std::vector<std::array<int, 3>>;

double twice_area(const std::vector<Point>& polygon) {
  double sum = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i) sum += cross(polygon[i], polygon[(i + 1) % polygon.size()]);
  return sum;
}

Point as_float(Point p) { return {static_cast<float>(p.x), static_cast<float>(p.y)}; }

/// Every triangle counter-clockwise, of the polygon's area together, every side inside shared by two and the polygon's
/// own used once.
void fills(const std::vector<Point>& polygon, const Triangles& triangles) {
  ASSERT_EQ(triangles.size() + 2, polygon.size());
  double sum = 0;
  std::map<std::pair<int, int>, int> sides;
  for (const auto& t : triangles) {
    EXPECT_GT(orient2d(polygon[t[0]], polygon[t[1]], polygon[t[2]]), 0);
    sum += orient2d(polygon[t[0]], polygon[t[1]], polygon[t[2]]);
    for (int k = 0; k < 3; ++k) ++sides[{t[k], t[(k + 1) % 3]}];
  }
  EXPECT_NEAR(sum, twice_area(polygon), 1e-9 * twice_area(polygon));
  const int n = static_cast<int>(polygon.size());
  for (const auto& [side, uses] : sides) {
    EXPECT_EQ(uses, 1);
    const bool own = side.second == (side.first + 1) % n;
    EXPECT_EQ(sides.count({side.second, side.first}), own ? 0U : 1U) << side.first << " " << side.second;
  }
}

std::vector<Point> star(int tips, double outer, double inner) {
  std::vector<Point> polygon;
  for (int i = 0; i < 2 * tips; ++i) {
    const double at = std::numbers::pi * i / tips, r = i % 2 ? inner : outer;
    polygon.push_back(as_float({r * std::cos(at), r * std::sin(at)}));
  }
  return polygon;
}

/// Two arms of a band that winds inwards.
std::vector<Point> spiral(int steps) {
  std::vector<Point> out, back;
  for (int i = 0; i <= steps; ++i) {
    const double at = 0.3 * i, r = 20 - 0.3 * i;
    out.push_back(as_float({r * std::cos(at), r * std::sin(at)}));
    back.push_back(as_float({(r - 1) * std::cos(at), (r - 1) * std::sin(at)}));
  }
  out.insert(out.end(), back.rbegin(), back.rend());
  return out;
}

TEST(Ears, FillStarsAndSpirals) {
  for (const int tips : {3, 7, 40}) fills(star(tips, 10, 3), cut_ears(star(tips, 10, 3)));
  fills(spiral(50), cut_ears(spiral(50)));
}

TEST(Ears, LeaveNoFlatTriangleBesideManyCornersOnOneLine) {
  std::vector<Point> polygon{{0, 0}};
  for (int i = 1; i <= 20; ++i) polygon.push_back({static_cast<double>(i), 0});
  polygon.push_back({20, 5});
  for (int i = 19; i >= 0; --i) polygon.push_back({static_cast<double>(i), 5});
  fills(polygon, cut_ears(polygon));
}

/// Two squares that meet in a corner, walked round as one polygon.
TEST(Ears, FillAPolygonThatTouchesItself) {
  const std::vector<Point> polygon{{0, 0}, {4, 0}, {4, 4}, {8, 4}, {8, 8}, {4, 8}, {4, 4}, {0, 4}};
  const Triangles triangles = cut_ears(polygon);
  double sum = 0;
  for (const auto& t : triangles) {
    EXPECT_GT(orient2d(polygon[t[0]], polygon[t[1]], polygon[t[2]]), 0);
    sum += orient2d(polygon[t[0]], polygon[t[1]], polygon[t[2]]);
  }
  EXPECT_DOUBLE_EQ(sum, 2 * 32);
}

double angle_at(Point corner, Point a, Point b) {
  return std::atan2(cross(a - corner, b - corner), dot(a - corner, b - corner));
}

TEST(Ears, EvenedOutAreDelaunayAndFillTheSame) {
  for (const auto& polygon : {star(9, 10, 6), spiral(30)}) {
    Triangles triangles = cut_ears(polygon);
    flip_to_delaunay(polygon, triangles);
    fills(polygon, triangles);
    std::map<std::pair<int, int>, double> opposite;  // the angle that a side is seen under
    for (const auto& t : triangles)
      for (int k = 0; k < 3; ++k)
        opposite[{t[k], t[(k + 1) % 3]}] = angle_at(polygon[t[(k + 2) % 3]], polygon[t[k]], polygon[t[(k + 1) % 3]]);
    for (const auto& [side, angle] : opposite)
      if (const auto twin = opposite.find({side.second, side.first}); twin != opposite.end()) {
        EXPECT_LE(angle + twin->second, std::numbers::pi + 1e-9);
      }
  }
}

}  // namespace
}  // namespace sagitta
