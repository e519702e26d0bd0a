// Points that become one when a file rounds them, against closed forms: a box's volume and Euler's number.

#include "mesh/Merge.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "mesh/MeshCheck.hpp"
#include "mesh/MeshFlaw.hpp"

namespace sagitta {
namespace {

constexpr double step = 1e-6;

/// A prism over a polygon that is star-shaped about its first corner, counter-clockwise from above.
Mesh prism(const std::vector<std::array<float, 2>>& polygon, float height) {
  Mesh mesh;
  const auto n = static_cast<std::uint32_t>(polygon.size());
  for (const float z : {0.0F, height})
    for (const auto& [x, y] : polygon) mesh.points.push_back({x, y, z});
  for (std::uint32_t i = 1; i + 1 < n; ++i) {
    mesh.triangles.push_back({0, i + 1, i});
    mesh.triangles.push_back({n, n + i, n + i + 1});
  }
  for (std::uint32_t i = 0; i < n; ++i) {
    const std::uint32_t next = (i + 1) % n;
    mesh.triangles.push_back({i, next, n + next});
    mesh.triangles.push_back({i, n + next, n + i});
  }
  mesh.face.resize(mesh.triangles.size());
  for (std::size_t t = 0; t < mesh.face.size(); ++t) mesh.face[t] = static_cast<std::int32_t>(t);
  return mesh;
}

TEST(Merge, LeavesABoxWhosePointsAreApart) {
  Mesh box = prism({{0, 0}, {3, 0}, {3, 2}, {0, 2}}, 1);
  const Mesh before = box;
  EXPECT_EQ(merge_equal_points(box, step), 0);
  EXPECT_EQ(box.points, before.points);
  EXPECT_EQ(box.triangles, before.triangles);
}

/// Two, then four corners of the lower and upper rim that a file could not tell apart: what is left is the box.
TEST(Merge, MakesABoxOfABoxWithDoubledCorners) {
  const float near = 4e-7F;
  for (const auto& outline : std::vector<std::vector<std::array<float, 2>>>{
           {{0, 0}, {3, 0}, {3, 2}, {0, 2}, {0, near}},
           {{0, 0}, {3, 0}, {3, near}, {3, 2}, {near, 2}, {0, 2}, {0, near}}}) {
    Mesh box = prism(outline, 1);
    ASSERT_TRUE(equal_points(box, step));
    const double moved = merge_equal_points(box, step);
    EXPECT_EQ(moved, double{near});
    EXPECT_EQ(unsound(box, 0), "");
    EXPECT_FALSE(equal_points(box, step));
    EXPECT_EQ(box.points.size(), 8U);
    EXPECT_EQ(box.triangles.size(), 12U);
    EXPECT_EQ(box.face.size(), 12U);
    EXPECT_TRUE(std::is_sorted(box.face.begin(), box.face.end())) << "triangles keep their order";
    EXPECT_NEAR(volume(box), 6, 3 * double{near});
  }
}

/// Points nearer than the step whose roundings differ are two in the file too.
TEST(Merge, LeavesPointsThatRoundToDifferentSteps) {
  Mesh box = prism({{0, 0}, {3, 0}, {3, 2}, {0, 2}, {0, 1.2e-6F}, {0, 4e-7F}}, 1);
  EXPECT_GT(merge_equal_points(box, step), 0);
  EXPECT_EQ(unsound(box, 0), "");
  EXPECT_EQ(box.points.size(), 10U);
}

/// A ring of `around` corners, once around a torus of so many: where it is so thin that three points of a waist are
/// one, the waist would be pinched off.
TEST(Merge, DoesNotPinchATubeOff) {
  constexpr std::uint32_t around = 3, along = 6;
  Mesh torus;
  for (std::uint32_t i = 0; i < along; ++i)
    for (std::uint32_t k = 0; k < around; ++k) {
      const double turn = 2 * std::numbers::pi * i / along, roll = 2 * std::numbers::pi * k / around;
      const double thin = i == 0 ? 2e-7 : 1, out = 5 + thin * std::cos(roll);
      torus.points.push_back({static_cast<float>(out * std::sin(turn)), static_cast<float>(thin * std::sin(roll)),
                              static_cast<float>(out * std::cos(turn))});
    }
  for (std::uint32_t i = 0; i < along; ++i)
    for (std::uint32_t k = 0; k < around; ++k) {
      const auto at = [&](std::uint32_t a, std::uint32_t b) { return a % along * around + b % around; };
      torus.triangles.push_back({at(i, k), at(i + 1, k), at(i + 1, k + 1)});
      torus.triangles.push_back({at(i, k), at(i + 1, k + 1), at(i, k + 1)});
    }
  if (volume(torus) < 0)
    for (auto& t : torus.triangles) std::swap(t[0], t[1]);
  ASSERT_EQ(unsound(torus, 1), "");
  ASSERT_TRUE(equal_points(torus, step));
  const Mesh before = torus;
  EXPECT_EQ(merge_equal_points(torus, step), 0);
  EXPECT_EQ(torus.triangles, before.triangles);
  EXPECT_TRUE(equal_points(torus, step)) << "the gate refuses it";
}

TEST(Merge, LeavesATetrahedron) {
  Mesh crumb;
  crumb.points = {{0, 0, 0}, {1e-7F, 0, 0}, {0, 1, 0}, {0, 0, 1}};
  crumb.triangles = {{0, 2, 1}, {0, 1, 3}, {1, 2, 3}, {0, 3, 2}};
  ASSERT_EQ(unsound(crumb, 0), "");
  EXPECT_EQ(merge_equal_points(crumb, step), 0);
  EXPECT_EQ(crumb.triangles.size(), 4U);
}

/// A pyramid of height 1 over a rhombus, 4 by 2. Its base is cut so that a side of other triangles, made longer, runs
/// between the ends of the short side, on either side of it: each end has a triangle that the move to the other end
/// would turn over.
TEST(Merge, TurnsNoTriangleOver) {
  enum : std::uint32_t { a, b, p, q, pp, qq, n, s, apex };
  Mesh pyramid;
  pyramid.points = {{0, 4e-7F, 0},  {0, 0, 0}, {1, 2e-7F, 0}, {2, 3e-7F, 0}, {-1, 2e-7F, 0},
                    {-2, 1e-7F, 0}, {0, 1, 0}, {0, -1, 0},    {0, 0, -1}};
  pyramid.triangles = {{b, p, a},  {a, pp, b}, {a, p, q}, {a, q, n},    {a, n, pp},    {n, qq, pp},   {b, pp, qq},
                       {b, qq, s}, {b, s, p},  {s, q, p}, {n, q, apex}, {qq, n, apex}, {s, qq, apex}, {q, s, apex}};
  ASSERT_EQ(unsound(pyramid, 0), "");
  ASSERT_TRUE(equal_points(pyramid, step));
  EXPECT_NEAR(volume(pyramid), 4.0 / 3, 1e-6);
  EXPECT_EQ(merge_equal_points(pyramid, step), 0);
  EXPECT_EQ(pyramid.triangles.size(), 14U);
  pyramid.points[q][1] = 5e-7F;  // now the first side, made longer, runs below both ends: the upper one may move
  EXPECT_GT(merge_equal_points(pyramid, step), 0);
  EXPECT_EQ(pyramid.triangles.size(), 12U);
  EXPECT_EQ(unsound(pyramid, 0), "");
  EXPECT_NEAR(volume(pyramid), 4.0 / 3, 1e-6);
}

}  // namespace
}  // namespace sagitta
