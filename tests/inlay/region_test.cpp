// What the fit does to regions, against closed forms.

#include "polygon/Region.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "inlay/ArcSplineFit.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Narrowest.hpp"
#include "inlay/OpenClose.hpp"
#include "inlay/SampleDrawings.hpp"

namespace sagitta {
namespace {

using namespace test;

// The bar of a dumbbell is 1.2 wide, the rest wider.
TEST(Region, HasAWidthAtEachSide) {
  const Region dumbbell{
      {{0, 0}, {5, 0}, {5, 1.9}, {9, 1.9}, {9, 0}, {14, 0}, {14, 5}, {9, 5}, {9, 3.1}, {5, 3.1}, {5, 5}, {0, 5}}};
  const std::vector<double> found = widths(dumbbell, true, 2).front();
  ASSERT_EQ(found.size(), 12U);
  for (std::size_t i = 0; i < found.size(); ++i) {
    if (i == 2 || i == 8) {
      EXPECT_NEAR(found[i], 1.2, 1e-9) << i;
    } else {
      EXPECT_GT(found[i], 2) << i;
    }
  }
}

// A hole 0.001 mm from the outline: it is followed closely there, and nowhere else.
TEST(Region, IsFollowedCloselyOnlyWhereItIsNarrow) {
  const Region plain = open_close(filled(flattened({wave({0, 0}, 60, 25, 1, 3)}, 1, {0, 0})), 0.4).region;
  const Point p = plain.front()[plain.front().size() / 2], q = plain.front()[plain.front().size() / 2 + 1];
  const Point middle = between(p, q, 0.5) + 0.001 * unit(left_of(q - p)), in = unit(left_of(q - p)), way = unit(q - p);
  Region holed = plain;
  holed.push_back({middle - 0.01 * way, middle + 0.01 * way, middle + 0.01 * way + in, middle - 0.01 * way + in});
  if (area(Region{holed.back()}) > 0) std::reverse(holed.back().begin(), holed.back().end());
  const std::size_t walls = fit_arc_splines(plain).front().size(), closer = fit_arc_splines(holed).front().size();
  EXPECT_LE(closer, walls + 12);
}

// Closing and opening only adds to what an opening leaves: no speck that whole numbers leave may grow to a hole, which
// would be half a square millimetre. The end of a strip as wide as the cutter may shift by ten times an offset's tenth
// of a micron, in each of three offsets.
TEST(Region, LosesNothingThatTheCutterReaches) {
  const double r = 0.4;
  for (unsigned seed = 0; seed < 60; ++seed) {
    Region drawn = filled(flattened({wave({0, 0}, 100, 2.4, 0.2, seed)}, 1, {0, 0}));
    for (const Point beside : {Point{5, 0}, Point{0, 5}}) {
      const Region other =
          open_close(filled(flattened({wave(beside, 100, 2.4, 0.2, seed + 100)}, 1, {0, 0})), r).region;
      drawn = difference(drawn, offset(other, 0.05));
    }
    const OpenClosed made = open_close(drawn, r);
    ASSERT_FALSE(made.narrow) << seed;
    EXPECT_LT(area(difference(opened(drawn, r), offset(made.region, tolerance::settled))), 2 * r * 10 * 3 * 0.0001)
        << seed;
  }
}

// No cutter leaves a hole as small as that: it would be a wall, and tighten the outline beside it.
TEST(Region, RefittedOutlinesBoundMoreThanASpeck) {
  const Polygon round = flattened({disc({0, 0}, 3)}, 1, {0, 0}).front();
  const Polygon speck{{2.9, 0}, {2.9, 0.01}, {2.908, 0.005}}, hole{{0, 0}, {0, 0.6}, {0.6, 0.3}};
  EXPECT_EQ(fit_arc_splines({round, speck}).size(), 1U);
  EXPECT_EQ(fit_arc_splines({round, speck}), fit_arc_splines({round}));
  EXPECT_EQ(fit_arc_splines({round, hole}).size(), 2U);
}

}  // namespace
}  // namespace sagitta
