// How far triangles stray, against closed forms: a chord's height h = r - sqrt(r^2 - (c/2)^2) (Machinery's Handbook,
// 31st ed., p. 79).

#include "mesh/Deviation.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace sagitta {
namespace {

constexpr double radius = 300, half = 20;

Surface cylinder() {
  Surface surface;
  surface.thickness = 6;
  surface.r0 = radius;
  return surface;
}

/// A facet from x = 0 to 10 between the lines y = from and y = to of the cylinder, halved by a diagonal.
double strays(double from, double to) {
  const Surface surface = cylinder();
  std::vector<std::array<float, 3>> points;
  std::vector<std::vector<BandPoint>> loops(1);
  for (const Point p : {Point{0, from}, {10, from}, {10, to}, {0, to}}) {
    loops[0].push_back({p, static_cast<int>(points.size())});
    points.push_back({static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(surface.height(p))});
  }
  const std::vector<std::array<std::uint32_t, 3>> triangles{{0, 1, 2}, {0, 2, 3}};
  return Deviation(surface, {BoundingSurface::Kind::offset_surface}).of(points, loops, triangles);
}

constexpr double of_floats = 1e-6;  // heights of 6 mm are rounded to half of 4.8e-7 mm

TEST(Deviation, OfAFacetAcrossTheCrownIsItsChordsHeight) {
  EXPECT_NEAR(strays(-half, half), radius - std::sqrt(radius * radius - half * half), of_floats);
}

/// Height times the cosine of the slope is the distance but for terms of the order of the chord's height over the
/// radius, 0.003 here; the greatest of the quarters is the middle but for less.
TEST(Deviation, OfASteepFacetIsSquareToTheSurface) {
  const double low = std::asin(100 / radius), high = std::asin(140 / radius);
  const double chord = radius * (1 - std::cos((high - low) / 2));
  EXPECT_NEAR(strays(100, 140), chord, chord * chord / radius);
}

TEST(Deviation, OfPointsOnTheSurfaceAloneIsRounding) { EXPECT_LT(strays(half, half + 0.01), of_floats); }

}  // namespace
}  // namespace sagitta
