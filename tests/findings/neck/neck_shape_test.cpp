// The glue face of a neck as a plane.

#include <gtest/gtest.h>

#include "neck/NeckShape.hpp"

namespace sagitta {
namespace {

/// Corners of z = 3 + 0.02 x - 0.05 y over a leaning parallelogram, where x and y are not independent.
TEST(NeckShape, FindsThePlaneOfALeaningFace) {
  NeckShape neck;
  const double corners[][2] = {{0, -20}, {400, -8}, {400, 44}, {0, 32}, {130, 10}};
  neck.outlines.emplace_back();
  for (const auto& [x, y] : corners) neck.outlines[0].push_back({x, y, 3 + 0.02 * x - 0.05 * y});
  const GluePlane plane = glue_plane(neck);
  EXPECT_NEAR(plane.height, 3, 1e-12);
  EXPECT_NEAR(plane.along, 0.02, 1e-13);
  EXPECT_NEAR(plane.across, -0.05, 1e-13);
}

}  // namespace
}  // namespace sagitta
