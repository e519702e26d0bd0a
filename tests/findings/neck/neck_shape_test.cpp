// The glue face of a neck as its file draws it.

#include <gtest/gtest.h>

#include <cmath>

#include "neck/NeckShape.hpp"

namespace sagitta {
namespace {

/// A neck whose glue face is the plane z = 3 + along x + across y of its file, the board drawn along the file's x.
NeckShape leaning(double along, double across) {
  NeckShape neck;
  const double up = std::hypot(1, along, across), way = std::hypot(1, along);
  neck.place.origin = {0, 0, 3};
  neck.place.up = {-along / up, -across / up, 1 / up};
  neck.place.along = {1 / way, 0, along / way};
  return neck;
}

// A board's line along x rises by sin atan 0.002 for each mm of its own, that is by 0.002 within 4e-9.
TEST(NeckShape, LeansAgainstTheNearestAxisOfItsFile) {
  const auto lean = lean_in_file(leaning(0.002, -0.005));
  ASSERT_TRUE(lean);
  EXPECT_NEAR(lean->along, 0.002, 1e-7);
  EXPECT_NEAR(lean->across, -0.005, 1e-7);
}

// 0.02 is 1.1 degrees: a neck that is meant to lie back.
TEST(NeckShape, ThatLiesBackIsMeantTo) { EXPECT_FALSE(lean_in_file(leaning(0.02, 0))); }

}  // namespace
}  // namespace sagitta
