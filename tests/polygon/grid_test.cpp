// The grid of whole numbers: the nearest one, and none beyond the greatest that a double holds exactly (IEEE 754:
// 2^53).

#include "polygon/Grid.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace sagitta {
namespace {

TEST(Grid, TakesTheNearestWholeNumber) {
  EXPECT_EQ(fine_grid.at({0.0000014, -0.0000014}), (GridPoint{1, -1}));
  EXPECT_EQ(fine_grid.at({0.0000016, -0.0000016}), (GridPoint{2, -2}));
  EXPECT_EQ(fine_grid.at({-0.0, 0.0}), (GridPoint{0, 0}));
  const Grid coarse{{100, -50}, 4};
  EXPECT_EQ(coarse.at({101, -50.2}), (GridPoint{4, -1}));
  EXPECT_EQ(coarse.point({4, -1}), (Point{101, -50.25}));
}

TEST(Grid, GivesBackWhatLiesOnIt) {
  const GridPath path{{0, 0}, {1, -1}, {123456789, -987654321}, {9007199254740992, -9007199254740992}};
  EXPECT_EQ(fine_grid.path(fine_grid.polygon(path)), path);
  const Grid drawing{{-3.7, 812.25}, 9e8 / 41.3};
  const GridPath within{{0, 0}, {900000000, 1}, {449999999, 899999999}};
  EXPECT_EQ(drawing.path(drawing.polygon(within)), within);
  EXPECT_EQ(fine_grid.paths(fine_grid.polygons({path, {}})), (GridPaths{path, {}}));
}

TEST(Grid, RefusesWhatIsTooFarAway) {
  const double most = 9007199254.740992;  // mm: 2^53 / 1e6
  EXPECT_EQ(fine_grid.at({most, -most}), (GridPoint{9007199254740992, -9007199254740992}));
  const double inf = std::numeric_limits<double>::infinity(), none = std::numeric_limits<double>::quiet_NaN();
  for (const double off : {most + 1, -most - 1, 1e300, inf, -inf, none}) {
    EXPECT_THROW(fine_grid.at({off, 0}), OffGrid) << off;
    EXPECT_THROW(fine_grid.at({0, off}), OffGrid) << off;
  }
  const Grid moved{{most, 0}, 1e6};
  EXPECT_NO_THROW(moved.at({1.9 * most, 0}));
  EXPECT_THROW(moved.at({-1, 0}), OffGrid);
}

}  // namespace
}  // namespace sagitta
