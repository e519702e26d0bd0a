// Arcs found along stations, against closed forms: places on circles and lines, and the tangent of two arcs that join.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "inlay/ArcSpline.hpp"
#include "inlay/Biarc.hpp"
#include "inlay/FitTolerance.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/PartPocket.hpp"
#include "plane/RoundedPolygon.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;

SmoothRun along(const std::vector<Point>& stations, double follow) {
  SmoothRun run;
  run.stations = stations;
  run.follow.assign(stations.size(), follow);
  return run;
}

std::vector<Point> on_circle(Point centre, double radius, double from, double to, int count) {
  std::vector<Point> stations;
  for (int i = 0; i <= count; ++i) {
    const double at = from + (to - from) * i / count;
    stations.push_back(centre + radius * Point{std::cos(at), std::sin(at)});
  }
  return stations;
}

void joins_smoothly(const std::vector<CurveSegment>& chain) {
  for (std::size_t i = 0; i + 1 < chain.size(); ++i) {
    EXPECT_LT(distance(chain[i].b, chain[i + 1].a), 1e-12);
    EXPECT_NEAR(cross(end_direction(chain[i]), -1 * end_direction(chain[i + 1].reversed())), 0, 1e-6);
  }
}

TEST(ArcSplineSearch, OfACircleIsThatCircle) {
  const std::vector<CurveSegment> chain = fit_arc_spline(along(on_circle({3, -2}, 7, 0.2, 1.7, 60), 0.0005));
  ASSERT_EQ(chain.size(), 1U);
  ASSERT_TRUE(chain[0].is_arc());
  EXPECT_NEAR(chain[0].radius, 7, 0.01);
  EXPECT_LT(distance(chain[0].centre, {3, -2}), 0.01);
  EXPECT_NEAR(chain[0].sweep, 1.5, 0.003);
}

TEST(ArcSplineSearch, OfALineIsStraight) {
  std::vector<Point> stations;
  for (int i = 0; i <= 30; ++i) stations.push_back({0.5 * i, 0.25 * i});
  const std::vector<CurveSegment> chain = fit_arc_spline(along(stations, 0.0005));
  ASSERT_EQ(chain.size(), 1U);
  EXPECT_NEAR(chain[0].length(), 15 * std::hypot(1, 0.5), 1e-9);
}

/// A sine wave bends both ways: the chain passes every station as near as asked, begins and ends in the outer ones, and
/// its length is the wave's (by Simpson's rule).
TEST(ArcSplineSearch, FollowsAWaveAsNearAsAsked) {
  std::vector<Point> stations;
  constexpr int count = 400;
  for (int i = 0; i <= count; ++i) {
    const double x = 4 * pi * i / count;
    stations.push_back({x, 2 * std::sin(x)});
  }
  const auto speed = [](double x) { return std::hypot(1, 2 * std::cos(x)); };
  double length = 0;
  for (int i = 0; i < count; ++i) {
    const double a = 4 * pi * i / count, b = 4 * pi * (i + 1) / count;
    length += (b - a) / 6 * (speed(a) + 4 * speed((a + b) / 2) + speed(b));
  }
  for (const double follow : {0.01, 0.001, 0.0001}) {
    const std::vector<CurveSegment> chain = fit_arc_spline(along(stations, follow));
    for (const Point p : stations) EXPECT_LE(off_chain(chain, p), follow * (1 + 1e-6));
    EXPECT_EQ(chain.front().a, stations.front());
    EXPECT_LT(distance(chain.back().b, stations.back()), 1e-9);
    joins_smoothly(chain);
    double found = 0;
    for (const CurveSegment& segment : chain) found += segment.length();
    EXPECT_NEAR(found, length, 20 * follow);
    EXPECT_LT(chain.size(), count / 4U) << "few arcs";
  }
}

/// Twice as near takes about the cube root of two more arcs each time: an arc's error rises with the cube of its
/// length.
TEST(ArcSplineSearch, TakesMoreArcsByTheCubeRootOfHowNear) {
  std::vector<Point> stations;
  for (int i = 0; i <= 4000; ++i) stations.push_back({0.01 * i, 3 * std::sin(0.01 * i) + 0.5 * std::sin(0.025 * i)});
  const double coarse = static_cast<double>(fit_arc_spline(along(stations, 0.008)).size());
  const double fine = static_cast<double>(fit_arc_spline(along(stations, 0.001)).size());
  EXPECT_GT(fine / coarse, 1.5);
  EXPECT_LT(fine / coarse, 2.7);
}

PartPocket pocket_about(const Loops& piece, double clearance) {
  return part_pocket(piece, flattened(piece, tolerance::fine_chords), clearance, 0.3, {});
}

/// A disc's pocket is a disc, a stadium's a stadium, exactly.
TEST(PartPocket, OfADiscAndAStadiumIsOneOfTheSameKind) {
  const double d = 0.05;
  const PartPocket disc = pocket_about({circle({2, 3}, 4)}, d);
  EXPECT_TRUE(disc.grown_piece.empty());
  ASSERT_EQ(disc.outlines.size(), 1U);
  EXPECT_NEAR(area(disc.outlines[0]), pi * 4.05 * 4.05, 1e-9);
  const Loop stadium = outline(RoundedPolygon{{{-5, 0}, {5, 0}}, 2});
  const PartPocket around = pocket_about({stadium}, d);
  EXPECT_TRUE(around.grown_piece.empty());
  EXPECT_NEAR(area(around.outlines[0]), pi * 2.05 * 2.05 + 10 * 4.1, 1e-9);
  EXPECT_NEAR(perimeter(around.outlines[0]), 2 * pi * 2.05 + 20, 1e-9);
}

/// A hole in a piece leaves an island in its pocket, smaller by the clearance.
TEST(PartPocket, OfARingShrinksItsIsland) {
  Loop hole = circle({0, 0}, 3);
  std::reverse(hole.begin(), hole.end());
  for (CurveSegment& segment : hole) segment = segment.reversed();
  const PartPocket ring = pocket_about({circle({0, 0}, 8), hole}, 0.1);
  ASSERT_EQ(ring.outlines.size(), 2U);
  EXPECT_NEAR(area(ring.outlines[0]) + area(ring.outlines[1]), pi * (8.1 * 8.1 - 2.9 * 2.9), 1e-9);
}

}  // namespace
}  // namespace sagitta
