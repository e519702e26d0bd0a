// What is done to polygons, against closed forms: outlines far inside each other take no part in each other's cuts.

#include "polygon/Region.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "inlay/Fit.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Narrowest.hpp"
#include "inlay/Refit.hpp"
#include "inlay/SampleDrawings.hpp"
#include "polygon/Extent.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;
using namespace test;

constexpr int count = 12;

/// Rings 2 wide, 3 apart, about the origin.
Region round_rings(double wider = 0) {
  Region all;
  for (int i = 0; i < count; ++i)
    for (const bool out : {true, false}) {
      const Loop round = circle({0, 0}, 4 + 5 * i + (out ? 2 + wider : -wider));
      Polygon polygon = flattened({round}, 0.00002).front();
      if (!out) std::reverse(polygon.begin(), polygon.end());
      all.push_back(std::move(polygon));
    }
  return all;
}

/// Of rings that are wider by so much on both sides.
double ring_area(double wider) {
  double sum = 0;
  for (int i = 0; i < count; ++i) sum += pi * (std::pow(6 + 5 * i + wider, 2) - std::pow(4 + 5 * i - wider, 2));
  return sum;
}

/// All outlines' length times a tenth of a micron, which offsets are within.
const double noise = 2 * pi * 24 * 33 * 0.0001;

TEST(Region, GrowsAndShrinksRingsWithinRings) {
  const Region rings = round_rings();
  for (const double by : {0.1, 0.4, 1.2, -0.1, -0.4, -0.9}) {
    const Region moved = grown(rings, by);
    EXPECT_EQ(moved.size(), rings.size()) << by;
    EXPECT_NEAR(area(moved), ring_area(by), noise) << by;
  }
  // Gaps close at 1.5: one disc with a hole of 4 - 1.6.
  const Region disc = grown(rings, 1.6);
  EXPECT_EQ(disc.size(), 2U);
  EXPECT_NEAR(area(disc), pi * (std::pow(61 + 1.6, 2) - std::pow(4 - 1.6, 2)), noise);
}

TEST(Region, CutsRingsWithinRings) {
  const Region rings = round_rings(), narrower = round_rings(-0.3);
  const Polygon disc = flattened({circle({0, 0}, 70)}, 0.00002).front(),
                small = flattened({circle({1, 0}, 2)}, 0.00002).front();
  EXPECT_NEAR(area(without(rings, narrower)), ring_area(0) - ring_area(-0.3), noise);
  EXPECT_NEAR(area(common(rings, narrower)), ring_area(-0.3), noise);
  EXPECT_NEAR(area(united(rings, narrower)), ring_area(0), noise);
  EXPECT_NEAR(area(without({disc}, rings)), pi * 4900 - ring_area(0), noise);
  EXPECT_TRUE(without(rings, {disc}).empty());
  EXPECT_NEAR(area(common({disc}, rings)), ring_area(0), noise);
  EXPECT_NEAR(area(united({disc}, rings)), pi * 4900, noise);
  EXPECT_NEAR(area(united(rings, {small})), ring_area(0) + pi * 4, noise);
  EXPECT_TRUE(common(rings, {small}).empty());
}

TEST(Region, TellsWhichMayMeet) {
  const Region ring{round_rings()[2], round_rings()[3]}, within{round_rings()[0], round_rings()[1]};
  const Region crossing{{{5, -1}, {8, -1}, {8, 1}, {5, 1}}}, inside{{{9.9, 0}, {10.1, 0}, {10, 0.1}}};
  EXPECT_FALSE(Extent(ring).may_meet(Extent(within), 1));
  EXPECT_FALSE(Extent(within).may_meet(Extent(ring), 1));
  EXPECT_TRUE(Extent(ring).may_meet(Extent(within), 3.1));
  EXPECT_TRUE(Extent(within).may_meet(Extent(crossing), 0));
  EXPECT_TRUE(Extent(ring).may_meet(Extent(inside), 0));
  EXPECT_TRUE(Extent(inside).may_meet(Extent(ring), 0));
}

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
  const Region plain = fit(filled(flattened({wave({0, 0}, 60, 25, 1, 3)}, 1, {0, 0})), 0.4).region;
  const Point p = plain.front()[plain.front().size() / 2], q = plain.front()[plain.front().size() / 2 + 1];
  const Point middle = between(p, q, 0.5) + 0.001 * unit(left_of(q - p)), in = unit(left_of(q - p)), way = unit(q - p);
  Region holed = plain;
  holed.push_back({middle - 0.01 * way, middle + 0.01 * way, middle + 0.01 * way + in, middle - 0.01 * way + in});
  if (area(Region{holed.back()}) > 0) std::reverse(holed.back().begin(), holed.back().end());
  const std::size_t walls = refitted(plain).front().size(), closer = refitted(holed).front().size();
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
      const Region other = fit(filled(flattened({wave(beside, 100, 2.4, 0.2, seed + 100)}, 1, {0, 0})), r).region;
      drawn = without(drawn, grown(other, 0.05));
    }
    const Fit made = fit(drawn, r);
    ASSERT_FALSE(made.narrow) << seed;
    EXPECT_LT(area(without(opened(drawn, r), grown(made.region, tolerance::settled))), 2 * r * 10 * 3 * 0.0001) << seed;
  }
}

// Whole numbers leave a tip that is folded back on itself by a twentieth of a micron. Grown, it is round all the same:
// the disc about it belongs to the region, but for the fold, which is 0.0016 mm long.
TEST(Region, GrowsRoundAFoldedTip) {
  const Point tip{2.592695, 2.030118};
  const Region wedge{{{2.594113, 2.029389}, tip, {2.593862, 2.029562}, {2.594382, 2.028614}, {3.2, 1.55}, {3.4, 1.75}}};
  const double r = 0.15;
  const Region round = grown(wedge, r);
  for (int i = 0; i < 60; ++i) EXPECT_TRUE(contains(round, tip + (r - 0.0017) * turned({1, 0}, 2 * pi * i / 60))) << i;
  EXPECT_GT(area(round), area(wedge) + pi * r * (r - 0.0034));
}

// No cutter leaves a hole as small as that: it would be a wall, and tighten the outline beside it.
TEST(Region, RefittedOutlinesBoundMoreThanASpeck) {
  const Polygon round = flattened({disc({0, 0}, 3)}, 1, {0, 0}).front();
  const Polygon speck{{2.9, 0}, {2.9, 0.01}, {2.908, 0.005}}, hole{{0, 0}, {0, 0.6}, {0.6, 0.3}};
  EXPECT_EQ(refitted({round, speck}).size(), 1U);
  EXPECT_EQ(refitted({round, speck}), refitted({round}));
  EXPECT_EQ(refitted({round, hole}).size(), 2U);
}

}  // namespace
}  // namespace sagitta
