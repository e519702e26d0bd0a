// Polygons moved out, against closed forms: the area A + P d + pi d^2 outwards where corners are rounded (Steiner's
// formula).

#include <gtest/gtest.h>

#include "polygon/MovedPath.hpp"
#include "polygon/Shapes.hpp"
#include "polygon/TiledBoolean.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;
using namespace test;

double grown_area(const Polygon& polygon, double by) {
  ClipJob job;
  job.subject = {moved_out(polygon, by)};
  double sum = 0;
  for (const GridPath& path : tiled_boolean(job, {})) sum += area(path) / fine_grid.per_mm / fine_grid.per_mm;
  return sum;
}

/// Steiner's formula for a convex polygon moved out; for one moved in: A - P d + d^2 times the sum of the corners'
/// tangents (its sides' lines meet).
TEST(MovedPath, OfAConvexPolygonHasSteinersArea) {
  for (const int corners : {3, 4, 5}) {
    const double radius = 8, half = pi / corners;
    const Polygon polygon = regular(corners, radius);
    const double area = corners * radius * radius * std::sin(half) * std::cos(half);
    const double perimeter = 2 * corners * radius * std::sin(half), d = 0.7;
    EXPECT_NEAR(grown_area(polygon, d), area + perimeter * d + pi * d * d, 0.0001 * 2 * pi * d);
    EXPECT_NEAR(grown_area(polygon, -d), area - perimeter * d + corners * std::tan(half) * d * d, 1e-4);
  }
}

/// The hollow corner of an L has no arc: A + P d + 5 quarter discs - the square that two sides share there.
TEST(MovedPath, OfAnLMeetsAtItsHollowCorner) {
  const Polygon ell{{0, 0}, {10, 0}, {10, 4}, {4, 4}, {4, 10}, {0, 10}};
  const double d = 0.5;
  EXPECT_NEAR(grown_area(ell, d), 64 + 40 * d + 5 * pi / 4 * d * d - d * d, 0.0001 * 2 * pi * d);
}

}  // namespace
}  // namespace sagitta
