// Surfaces that are told apart over a box, against heights at a grid of places in it.

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "plan/HeightsApart.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// The least and the greatest gap between the two surfaces on a grid.
std::pair<double, double> gaps(const SurfacePair& pair, const Box& box) {
  std::pair<double, double> found{1e300, -1e300};
  constexpr int steps = 8;
  for (int i = 0; i <= steps; ++i)
    for (int k = 0; k <= steps; ++k) {
      const Point p{box.low.x + (box.high.x - box.low.x) * i / steps, box.low.y + (box.high.y - box.low.y) * k / steps};
      found = {std::min(found.first, pair.gap(p)), std::max(found.second, pair.gap(p))};
    }
  return found;
}

SurfacePair any(std::mt19937& random) {
  const auto between = [&](double low, double high) { return std::uniform_real_distribution(low, high)(random); };
  SurfacePair pair;
  pair.surface.thickness = between(4, 9);
  pair.surface.flat = between(0, 1) < 0.2;
  pair.surface.r0 = between(120, 500);
  pair.surface.r1 = between(0, 0.3);
  pair.surface.fall_start = 300;
  pair.surface.fall_slope = between(0, 0.01);
  pair.upper = {BoundingSurface::Kind::offset_surface, between(0, 3), between(0, 1) < 0.3};
  pair.other = {BoundingSurface::Kind::level, between(0, 9)};
  return pair;
}

TEST(HeightsApart, AreSoAtEveryPlace) {
  std::mt19937 random(3);
  const auto between = [&](double low, double high) { return std::uniform_real_distribution(low, high)(random); };
  int told = 0;
  for (int i = 0; i < 4000; ++i) {
    const SurfacePair pair = any(random);
    Box box;
    box.add({between(-10, 450), between(-35, 35)});
    box.add(box.low + Point{between(0, 60), between(0, 20)});
    const auto [least, most] = gaps(pair, box);
    const bool apart = are_apart(pair.surface, pair.upper, pair.other, box);
    EXPECT_TRUE(!apart || least > tolerance::height || most < -tolerance::height) << least << " to " << most;
    told += apart;
    // a drop over 20 mm is less than 6 mm at these radii: what is further apart is told
    EXPECT_TRUE(apart || (least <= 8 && most >= -8)) << least << " to " << most;
  }
  EXPECT_GT(told, 1000);
}

TEST(HeightsApart, AreNotWhereTheSurfaceIsNoConeOrHasAnotherForm) {
  SurfacePair pair;
  pair.surface.thickness = 6;
  pair.surface.r0 = 200;
  pair.upper = {BoundingSurface::Kind::offset_surface};
  pair.other = {BoundingSurface::Kind::level, -100};
  const Box box{{0, 0}, {1, 1}};
  EXPECT_TRUE(are_apart(pair.surface, pair.upper, pair.other, box));
  EXPECT_FALSE(are_apart(pair.surface, pair.other, pair.upper, box));
  pair.surface.r2 = 1e-5;
  EXPECT_FALSE(are_apart(pair.surface, pair.upper, pair.other, box));
  pair.surface.r2 = 0;
  pair.upper.form = 1;
  EXPECT_FALSE(are_apart(pair.surface, pair.upper, pair.other, box));
}

}  // namespace
}  // namespace sagitta
