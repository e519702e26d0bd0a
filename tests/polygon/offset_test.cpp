// Regions grown and shrunk, against Steiner's formula: a convex polygon of area A and perimeter P grown by d has the
// area A + P d + pi d^2; shrunk, its sides' lines meet.

#include <gtest/gtest.h>

#include <algorithm>

#include "polygon/Shapes.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;
using namespace test;

/// An offset stays within a tenth of a micron of exact: so much along an outline of this length.
double noise(double length) { return 0.0001 * length; }

int outer(const Region& region) {
  return static_cast<int>(
      std::count_if(region.begin(), region.end(), [](const Polygon& polygon) { return area(Region{polygon}) > 0; }));
}

TEST(Offset, OfASquare) {
  const double s = 10;
  const Region one{square({-3, 7}, s)};
  for (const double d : {0.001, 0.05, 0.4, 3.0, 40.0}) {
    const Region moved = offset(one, d);
    ASSERT_EQ(moved.size(), 1U) << d;
    EXPECT_NEAR(area(moved), s * s + 4 * s * d + pi * d * d, noise(4 * s + 2 * pi * d)) << d;
    const Box box = bounds(moved);
    EXPECT_NEAR(distance(box.low, {-3 - d, 7 - d}), 0, 0.0002) << d;
    EXPECT_NEAR(distance(box.high, {7 + d, 17 + d}), 0, 0.0002) << d;
  }
  for (const double d : {0.001, 0.05, 0.4, 3.0, 4.9}) {
    const Region moved = offset(one, -d);
    ASSERT_EQ(moved.size(), 1U) << d;
    EXPECT_NEAR(area(moved), (s - 2 * d) * (s - 2 * d), noise(4 * s)) << d;
  }
  EXPECT_TRUE(offset(one, -5.001).empty());
  EXPECT_TRUE(offset(one, -1e6).empty());
}

// As many corners as a disc of a drawing has. Inwards the sides' lines meet: the polygon with an apothem that is less.
TEST(Offset, OfADisc) {
  const double r = 4, half = pi / 400, apothem = r * std::cos(half), perimeter = 800 * r * std::sin(half);
  const Region disc{regular(400, r, {20, -1})};
  for (const double d : {0.05, 1.0, 9.0}) {
    const Region moved = offset(disc, d);
    ASSERT_EQ(moved.size(), 1U) << d;
    EXPECT_NEAR(area(moved), regular_area(400, r) + perimeter * d + pi * d * d, noise(2 * pi * (r + d))) << d;
  }
  for (const double d : {0.05, 1.0, 3.9, 3.99}) {
    const Region moved = offset(disc, -d);
    ASSERT_EQ(moved.size(), 1U) << d;
    EXPECT_NEAR(area(moved), 400 * std::pow(apothem - d, 2) * std::tan(half), noise(2 * pi * (r - d))) << d;
  }
  EXPECT_TRUE(offset({regular(40, r)}, -4.001).empty());
}

// Outwards a square hole keeps its corners and shrinks; inwards it grows round.
TEST(Offset, OfAPlateWithAHole) {
  const Region plate{square({0, 0}, 20), hole(square({6, 6}, 8))};
  for (const double d : {0.1, 1.0, 3.9}) {
    const Region moved = offset(plate, d);
    ASSERT_EQ(moved.size(), 2U) << d;
    EXPECT_EQ(outer(moved), 1) << d;
    EXPECT_NEAR(area(moved), 400 + 80 * d + pi * d * d - (8 - 2 * d) * (8 - 2 * d), noise(120)) << d;
  }
  EXPECT_EQ(offset(plate, 4.001).size(), 1U) << "the hole is closed";
  for (const double d : {0.1, 1.0, 2.9}) {
    const Region moved = offset(plate, -d);
    ASSERT_EQ(moved.size(), 2U) << d;
    EXPECT_EQ(outer(moved), 1) << d;
    EXPECT_NEAR(area(moved), (20 - 2 * d) * (20 - 2 * d) - (64 + 32 * d + pi * d * d), noise(120)) << d;
  }
  // The rim is 6 wide: at 3.001 only the four corners beyond the hole's round ones are left.
  const Region corners = offset(plate, -3.001);
  EXPECT_EQ(corners.size(), 4U);
}

// Two squares 1 apart: they meet at 0.5. Then the area is that of one rectangle grown, less two pointed bays of which
// the closed form is the strip between two arcs of radius d about corners 1 apart.
TEST(Offset, RunsTogetherWhereItMeets) {
  const Region two{square({0, 0}, 4), square({5, 0}, 4)};
  EXPECT_EQ(offset(two, 0.499).size(), 2U);
  const double d = 1;
  const Region moved = offset(two, d);
  ASSERT_EQ(moved.size(), 1U);
  // Above the gap: the rectangle's edge is d high; the arcs reach sqrt(d^2 - x^2) over it, x from each corner to 0.5.
  const double under_arcs = 2 * (0.5 * 0.5 * std::sqrt(d * d - 0.25) + d * d / 2 * std::asin(0.5 / d));
  EXPECT_NEAR(area(moved), 9 * 4 + 2 * (9 + 4) * d + pi * d * d - 2 * (1 * d - under_arcs), noise(60));
  // Shrunk again, the gap stays closed but for the two bays into which a disc of that radius dips.
  const Region back = offset(moved, -d);
  EXPECT_NEAR(area(back), 36 - 2 * (under_arcs - std::sqrt(d * d - 0.25)), noise(60));
  EXPECT_LT(area(difference({two}, back)), noise(60));
}

// Parts fall off where a neck is narrower than twice the offset.
TEST(Offset, PartsANeck) {
  const Region dumbbell{
      {{0, 0}, {4, 0}, {4, 1.5}, {8, 1.5}, {8, 0}, {12, 0}, {12, 4}, {8, 4}, {8, 2.5}, {4, 2.5}, {4, 4}, {0, 4}}};
  EXPECT_EQ(offset(dumbbell, -0.49).size(), 1U);
  const Region two = offset(dumbbell, -0.51);
  ASSERT_EQ(two.size(), 2U);
  // At the neck each square reaches further out, between the discs about the neck's corners.
  const double d = 0.51, discs = 0.5 * std::sqrt(d * d - 0.25) + d * d * std::asin(0.5 / d);
  EXPECT_NEAR(area(two), 2 * (2.98 * 2.98 + d - discs), noise(40));
}

TEST(Offset, OfNothingAndByNothing) {
  const Region one{square({0, 0}, 3)};
  EXPECT_TRUE(offset({}, 1).empty());
  EXPECT_TRUE(offset({}, -1).empty());
  EXPECT_EQ(offset(one, 0), one);
}

// Points that are there twice, sides that run back along themselves and polygons without an inside.
TEST(Offset, OfWhatIsDegenerate) {
  const double d = 0.5, expected = 16 + 16 * d + pi * d * d;
  const Polygon twice{{0, 0}, {0, 0}, {4, 0}, {4, 0}, {4, 4}, {4, 4}, {4, 4}, {0, 4}, {0, 0}};
  EXPECT_NEAR(area(offset({twice}, d)), expected, noise(20));
  const Polygon along{{0, 0}, {1, 0}, {2, 0}, {4, 0}, {4, 4}, {0, 4}, {0, 2}};
  EXPECT_NEAR(area(offset({along}, d)), expected, noise(20));
  const Polygon slit{{0, 0}, {4, 0}, {4, 2}, {2, 2}, {4, 2}, {4, 4}, {0, 4}};  // into the square and back
  EXPECT_NEAR(area(offset({slit}, d)), expected, noise(20));
  EXPECT_NEAR(area(offset({slit}, -d)), 9 - 1.5 - pi * d * d / 2, noise(20)) << "shrunk, it is a cut without width";
  for (const Region& none : {Region{{}}, Region{{{1, 1}}}, Region{{{1, 1}, {2, 2}}}}) {
    EXPECT_TRUE(offset(none, d).empty());
    EXPECT_TRUE(offset(none, -d).empty());
  }
}

TEST(Offset, CancelledGivesNothing) {
  Cancel cancel;
  cancel.request();
  EXPECT_TRUE(offset({square({0, 0}, 3)}, 1, cancel).empty());
}

// Whole numbers leave a tip that is folded back on itself by a twentieth of a micron. Grown, it is round all the same:
// the disc about it belongs to the region, but for the fold, which is 0.0016 mm long.
TEST(Offset, RunsRoundAFoldedTip) {
  const Point tip{2.592695, 2.030118};
  const Region wedge{{{2.594113, 2.029389}, tip, {2.593862, 2.029562}, {2.594382, 2.028614}, {3.2, 1.55}, {3.4, 1.75}}};
  const double r = 0.15;
  const Region round = offset(wedge, r);
  for (int i = 0; i < 60; ++i) EXPECT_TRUE(contains(round, tip + (r - 0.0017) * turned({1, 0}, 2 * pi * i / 60))) << i;
  EXPECT_GT(area(round), area(wedge) + pi * r * (r - 0.0034));
}

}  // namespace
}  // namespace sagitta
