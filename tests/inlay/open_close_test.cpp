// The fit against closed forms and on random drawings. Round cutters leave exactly what Minkowski opening leaves.

#include <gtest/gtest.h>

#include "inlay/ArcSplineFit.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Narrowest.hpp"
#include "inlay/OpenClose.hpp"
#include "inlay/SampleDrawings.hpp"
#include "inlay/Stray.hpp"
#include "polygon/HausdorffDistance.hpp"
#include "polygon/OutlineIndex.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;
using namespace test;

/// Outlines are within a micron of exact: chords of the drawing, of each of the seven offsets, and Clipper's rounding.
constexpr double micron = 0.001;

Region square(double a) { return {{{0, 0}, {a, 0}, {a, a}, {0, a}}}; }

// Each corner loses r^2 - pi r^2 / 4.
TEST(Fit, RoundsTheCornersOfASquare) {
  const double a = 10, r = 1.5;
  const Region piece = open_close(square(a), r).region;
  EXPECT_NEAR(area(piece), a * a - (4 - pi) * r * r, 2 * pi * r * micron);
  // Steiner's formula for a convex piece: A + P c + pi c^2.
  const double outline = 4 * (a - 2 * r) + 2 * pi * r;
  EXPECT_NEAR(area(offset(piece, 0.05)), area(piece) + outline * 0.05 + pi * 0.05 * 0.05, outline * micron);
}

// TRADE: a corner stands off r (sqrt 2 - 1): 0.58 mm cutter 0.121 mm (there to three digits; here exactly).
TEST(Fit, LeavesASharpCornerStanding) {
  const Region drawn = square(8);
  const HausdorffDistance most = hausdorff_distance(drawn, open_close(drawn, 0.29).region);
  EXPECT_NEAR(most.distance, 0.29 * (std::sqrt(2.0) - 1), micron);
  EXPECT_NEAR(std::abs(most.at.x - 4) + std::abs(most.at.y - 4), 8, micron);
}

TEST(Fit, KeepsADiscLargerThanTheCutter) {
  const Region drawn = flattened({disc({1, 2}, 3)}, 1, {0, 0});
  const Region piece = open_close(drawn, 2.9).region;
  EXPECT_LT(hausdorff_distance(drawn, piece).distance, micron);
  const Loops loops = fit_arc_splines(piece);
  ASSERT_EQ(loops.size(), 1u);
  ASSERT_EQ(loops[0].size(), 2u);
  EXPECT_NEAR(loops[0][0].radius, 3, micron);
  EXPECT_NEAR(distance(loops[0][0].centre, {1, 2}), 0, micron);
}

TEST(Fit, LeavesNothingOfAStripNarrowerThanTheCutter) {
  EXPECT_TRUE(open_close({{{0, 0}, {10, 0}, {10, 1}, {0, 1}}}, 0.6).region.empty());
}

// Five outer corners lose (1 - pi/4) r^2 each, the inner one gains as much.
TEST(Fit, RoundsAnLOutsideAndInside) {
  const double r = 0.8;
  const Region piece = open_close({{{0, 0}, {10, 0}, {10, 4}, {4, 4}, {4, 10}, {0, 10}}}, r).region;
  EXPECT_NEAR(area(piece), 64 - 4 * (1 - pi / 4) * r * r, 40 * micron);
}

// A U has six outer corners and two inner ones.
TEST(Fit, RoundsAU) {
  const double r = 0.5;
  const Region piece = open_close({{{0, 0}, {9, 0}, {9, 8}, {6, 8}, {6, 3}, {3, 3}, {3, 8}, {0, 8}}}, r).region;
  EXPECT_NEAR(area(piece), 72 - 15 - (6 - 2) * (1 - pi / 4) * r * r, 50 * micron);
}

// Teeth wider than the cutter stay, gaps narrower than it are filled.
TEST(Fit, FillsTheGapsOfAFineComb) {
  Polygon comb{{0, 0}, {10, 0}};
  for (int tooth = 4; tooth >= 0; --tooth) {
    comb.insert(comb.end(), {{2.0 * tooth + 2, 6}, {2.0 * tooth + 0.4, 6}});
    if (tooth > 0) comb.insert(comb.end(), {{2.0 * tooth + 0.4, 3}, {2.0 * tooth, 3}});
  }
  comb.push_back({0.4, 0});
  const Region piece = open_close({comb}, 0.5).region;
  ASSERT_EQ(piece.size(), 1u);
  EXPECT_NEAR(area(piece), 9.6 * 6 + 0.2 * 0, 1.5);  // the left side leans by 0.4; filled gaps end in hollows
  EXPECT_TRUE(contains(piece, {4.2, 4}));
}

// A point of a star with half-angle a loses r^2 (1/tan a - (pi/2 - a)); an inner corner of half-angle b gains the same
// with b.
TEST(Fit, RoundsTheTipsOfAStar) {
  const int tips = 5;
  const double outer = 12, inner = 6, r = 0.4;
  Polygon star;
  for (int i = 0; i < 2 * tips; ++i) star.push_back((i % 2 ? inner : outer) * turned({1, 0}, pi * i / tips));
  const auto half = [&](int i) {
    const Point p = star[i], q = star[(i + 1) % star.size()] - p, o = star[(i + star.size() - 1) % star.size()] - p;
    return std::acos(dot(unit(q), unit(o))) / 2;
  };
  const auto loss = [&](double a) { return r * r * (1 / std::tan(a) - (pi / 2 - a)); };
  const Region piece = open_close({star}, r).region;
  EXPECT_NEAR(area(piece), area(Region{star}) - tips * loss(half(0)) + tips * loss(half(1)), 90 * micron);
}

// Two discs nearer than the closing radius: closing bridges them with a neck too thin for the cutter.
TEST(Fit, DoesNotFallIntoTheTrapOfTwoDiscs) {
  const double r = 0.5, gap = 0.35;
  const Region drawn = flattened({disc({-2, 0}, 2 - gap / 2), disc({2, 0}, 2 - gap / 2)}, 1, {0, 0});
  const OpenClosed made = open_close(drawn, r);
  ASSERT_FALSE(made.narrow);
  const Region pocket = offset(made.region, 0.05);
  EXPECT_LT(hausdorff_distance(pocket, opened(pocket, r)).distance, micron);
}

TEST(Fit, FindsTheLargestCutterForADeparture) {
  EXPECT_NEAR(largest_radius(square(10), 0.2, 3), 0.2 / (std::sqrt(2.0) - 1), 0.004);
}

TEST(Fit, MeasuresANeck) {
  // Two squares joined by a bar 1.2 wide.
  const Region dumbbell{
      {{0, 0}, {5, 0}, {5, 1.9}, {9, 1.9}, {9, 0}, {14, 0}, {14, 5}, {9, 5}, {9, 3.1}, {5, 3.1}, {5, 5}, {0, 5}}};
  EXPECT_NEAR(narrowest(dumbbell, true, 5).width, 1.2, 1e-9);
}

TEST(Refit, FollowsSmoothCurvesWithOneTangent) {
  const Region drawn = filled(flattened({wave({0, 0}, 24, 15, 2, 7)}, 1, {0, 0}));
  const Region piece = open_close(drawn, 0.4).region;
  const Loops loops = fit_arc_splines(piece);
  EXPECT_LT(stray(flattened(loops), piece), tolerance::fitted);
  EXPECT_LT(stray(piece, flattened(loops)), tolerance::fitted);
  for (const Loop& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Point in = unit(loop[i].slope(1)), out = unit(loop[(i + 1) % loop.size()].slope(0));
      EXPECT_LT(std::abs(std::atan2(cross(in, out), dot(in, out))), 0.005);
      EXPECT_EQ(loop[i].b, loop[(i + 1) % loop.size()].a);
    }
}

TEST(Refit, MakesOneArcOfEachRoundedCorner) {
  const Loops loops = fit_arc_splines(open_close(square(10), 1.5).region);
  ASSERT_EQ(loops.size(), 1u);
  ASSERT_EQ(loops[0].size(), 8u);
  for (const CurveSegment& segment : loops[0]) {
    if (segment.is_arc()) {
      EXPECT_NEAR(segment.radius, 1.5, tolerance::fitted);
    }
  }
}

}  // namespace
}  // namespace sagitta
