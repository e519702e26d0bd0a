// What is done to regions, against closed forms: outlines far inside each other take no part in each other's cuts.

#include "polygon/Region.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "polygon/AddedPlaces.hpp"
#include "polygon/Extent.hpp"
#include "polygon/HausdorffDistance.hpp"
#include "polygon/Neighbours.hpp"
#include "polygon/Shapes.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;
using namespace test;

constexpr int count = 12;

Polygon round_of(double radius, Point centre = {}) {
  // Chords within 0.00002 mm.
  return regular(static_cast<int>(std::ceil(pi / std::acos(1 - 0.00002 / radius))), radius, centre);
}

/// Rings 2 wide, 3 apart, about the origin.
Region round_rings(double wider = 0) {
  Region all;
  for (int i = 0; i < count; ++i) {
    all.push_back(round_of(6 + 5 * i + wider));
    all.push_back(hole(round_of(4 + 5 * i - wider)));
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
    const Region moved = offset(rings, by);
    EXPECT_EQ(moved.size(), rings.size()) << by;
    EXPECT_NEAR(area(moved), ring_area(by), noise) << by;
  }
  // Gaps close at 1.5: one disc with a hole of 4 - 1.6.
  const Region disc = offset(rings, 1.6);
  EXPECT_EQ(disc.size(), 2U);
  EXPECT_NEAR(area(disc), pi * (std::pow(61 + 1.6, 2) - std::pow(4 - 1.6, 2)), noise);
}

TEST(Region, CutsRingsWithinRings) {
  const Region rings = round_rings(), narrower = round_rings(-0.3);
  const Polygon disc = round_of(70), small = round_of(2, {1, 0});
  EXPECT_NEAR(area(difference(rings, narrower)), ring_area(0) - ring_area(-0.3), noise);
  EXPECT_NEAR(area(intersection(rings, narrower)), ring_area(-0.3), noise);
  EXPECT_NEAR(area(union_of(rings, narrower)), ring_area(0), noise);
  EXPECT_NEAR(area(difference({disc}, rings)), pi * 4900 - ring_area(0), noise);
  EXPECT_TRUE(difference(rings, {disc}).empty());
  EXPECT_NEAR(area(intersection({disc}, rings)), ring_area(0), noise);
  EXPECT_NEAR(area(union_of({disc}, rings)), pi * 4900, noise);
  EXPECT_NEAR(area(union_of(rings, {small})), ring_area(0) + pi * 4, noise);
  EXPECT_TRUE(intersection(rings, {small}).empty());
}

// Squares that overlap by chance: |a| + |b| = |a or b| + |a and b|, and |a without b| = |a| - |a and b|.
TEST(Region, ObeysInclusionAndExclusion) {
  unsigned seed = 7;
  const auto next = [&] { return static_cast<double>((seed = seed * 1664525 + 1013904223) >> 8) / (1 << 24); };
  for (int trial = 0; trial < 40; ++trial) {
    Region sides[2];
    for (Region& side : sides) {
      Region loose;
      for (int i = 0; i < 6; ++i) loose.push_back(square({6 * next(), 6 * next()}, 0.5 + 3 * next()));
      side = filled(loose);
    }
    const Region &a = sides[0], &b = sides[1];
    EXPECT_NEAR(area(union_of(a, b)) + area(intersection(a, b)), area(a) + area(b), 1e-3) << trial;
    EXPECT_NEAR(area(difference(a, b)), area(a) - area(intersection(a, b)), 1e-3) << trial;
    EXPECT_NEAR(area(difference(b, a)), area(b) - area(intersection(a, b)), 1e-3) << trial;
    EXPECT_NEAR(area(union_of(difference(a, b), b)), area(union_of(a, b)), 1e-3) << trial;
  }
}

TEST(Region, AnswersWithHolesClockwise) {
  const Region ring = difference({square({0, 0}, 10)}, {square({3, 3}, 4)});
  ASSERT_EQ(ring.size(), 2U);
  EXPECT_NEAR(std::max(area(Region{ring[0]}), area(Region{ring[1]})), 100, 1e-9);
  EXPECT_NEAR(std::min(area(Region{ring[0]}), area(Region{ring[1]})), -16, 1e-9);
  EXPECT_NEAR(area(difference({square({0, 0}, 10)}, ring)), 16, 1e-9) << "what fills the hole";
}

TEST(Region, OfNothing) {
  const Region none, one{square({0, 0}, 3)};
  EXPECT_EQ(area(none), 0);
  EXPECT_EQ(union_of(none, one), one);
  EXPECT_EQ(union_of(one, none), one);
  EXPECT_EQ(difference(one, none), one);
  EXPECT_TRUE(difference(none, one).empty());
  EXPECT_TRUE(intersection(one, none).empty());
  EXPECT_TRUE(filled(none).empty());
  EXPECT_TRUE(parts(none).empty());
  EXPECT_FALSE(contains(none, {0, 0}));
}

// A figure of eight winds once each way; only what it winds about counter-clockwise is filled.
TEST(Region, FillsWhatIsWoundAboutCounterClockwise) {
  const Polygon eight{{0, 0}, {4, 4}, {4, 0}, {0, 4}};  // the right lobe clockwise... the left one the other way
  const Region found = filled({eight});
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NEAR(area(found), 4, 1e-5);
  EXPECT_TRUE(filled({hole(square({0, 0}, 3))}).empty());
  EXPECT_NEAR(area(filled({square({0, 0}, 3), square({1, 1}, 3)})), 14, 1e-9);
}

TEST(Region, FallsIntoPartsWithTheirHoles) {
  // A plate with a hole, an island in the hole with a hole of its own, and a square beside.
  const Region all{hole(square({9, 9}, 2)), square({0, 0}, 20), square({8, 8}, 4), hole(square({4, 4}, 12)),
                   square({30, 0}, 1)};
  const std::vector<Region> found = parts(all);
  ASSERT_EQ(found.size(), 3U);
  EXPECT_EQ(found[0], (Region{all[1], all[3]}));
  EXPECT_EQ(found[1], (Region{all[2], all[0]}));
  EXPECT_EQ(found[2], Region{all[4]});
}

TEST(Region, HoldsWhatItsHolesDoNot) {
  const Region ring{square({0, 0}, 10), hole(square({3, 3}, 4))};
  EXPECT_TRUE(contains(ring, {1, 5}));
  EXPECT_FALSE(contains(ring, {5, 5}));
  EXPECT_FALSE(contains(ring, {-1, 5}));
  EXPECT_FALSE(contains(ring, {11, 5}));
  EXPECT_TRUE(contains(ring[1], {5, 5})) << "a polygon of either direction holds what lies within";
}

TEST(Region, IsThinnedWithinItsTolerance) {
  const double r = 10, tolerance = 0.01;
  const Region fine{regular(2000, r)}, few = thinned(fine, tolerance);
  ASSERT_EQ(few.size(), 1U);
  // A chord stands off by r (1 - cos(pi / n)); at most half of the points that just do are needed.
  EXPECT_GE(few[0].size(), pi / std::acos(1 - tolerance / r));
  EXPECT_LE(few[0].size(), 2 * pi / std::acos(1 - tolerance / r));
  for (const Point p : few[0]) EXPECT_NE(std::find(fine[0].begin(), fine[0].end(), p), fine[0].end());
  EXPECT_LE(hausdorff_distance(fine, few).distance, tolerance);
  const Region triangle{regular(3, 1)};
  EXPECT_EQ(thinned(triangle, 100), triangle) << "three points are kept";
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

// The Hausdorff distance of a square and the same square moved along a side is the way it was moved; of discs about one
// centre it is the difference of their radii.
TEST(HausdorffDistance, IsTheHausdorffDistance) {
  EXPECT_NEAR(hausdorff_distance({square({0, 0}, 10)}, {square({0.3, 0}, 10)}).distance, 0.3, 1e-6);
  for (const double by : {0.25, -0.25})
    EXPECT_NEAR(hausdorff_distance({round_of(5)}, {round_of(5 + by)}).distance, 0.25, 0.0001) << by;
  EXPECT_EQ(hausdorff_distance({square({0, 0}, 10)}, {square({0, 0}, 10)}).distance, 0);
  // A bump: its tip is the place.
  const Region bump{{{0, 0}, {10, 0}, {10, 10}, {6, 10}, {5, 12}, {4, 10}, {0, 10}}};
  const HausdorffDistance found = hausdorff_distance({square({0, 0}, 10)}, bump);
  EXPECT_NEAR(found.distance, 2, 1e-6);
  EXPECT_NEAR(distance(found.at, {5, 12}), 0, 1e-6);
}

TEST(AddedPlaces, AreThoseFurtherOffThanTheOffset) {
  const Region plain{square({0, 0}, 10)},
      bump{{{-0.01, -0.01}, {10.01, -0.01}, {10.01, 10.01}, {6, 10.01}, {5, 10.8}, {4, 10.01}, {-0.01, 10.01}}};
  const Region found = added_places(bump, plain, 0.05, 1);
  ASSERT_EQ(found.size(), 1U);
  // The bump and no more than the skin within reach of it.
  EXPECT_GT(area(found), 0.79);
  EXPECT_LT(area(found), 0.79 + 0.01 * 6);
  EXPECT_TRUE(added_places(plain, plain, 0.05, 1).empty());
}

// Rings within rings, of enough points that a closer look pays: those within reach are one group, and a group knows
// which outlines go round it.
TEST(Neighbours, KnowWhatGoesRoundThem) {
  const Region all{regular(2000, 30), hole(regular(2000, 29)), regular(200, 10), square({-1, -1}, 2)};
  std::vector<const Polygon*> polygons;
  for (const Polygon& polygon : all) polygons.push_back(&polygon);
  const std::vector<Neighbours> found = neighbours(polygons, 1.5);
  ASSERT_EQ(found.size(), 3U);
  EXPECT_EQ(found[0].members, (std::vector{0, 1}));
  EXPECT_TRUE(found[0].about.empty());
  EXPECT_EQ(found[1].members, std::vector{2});
  EXPECT_EQ(found[1].about, (std::vector{0, 1}));
  EXPECT_EQ(found[2].members, std::vector{3});
  EXPECT_EQ(found[2].about, (std::vector{0, 1, 2}));
}

}  // namespace
}  // namespace sagitta
