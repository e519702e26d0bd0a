// Boolean operations against closed forms: overlapping squares by inclusion and exclusion, and a pentagram, whose inner
// pentagon's radius is the outer one's over the golden ratio's square.

#include "polygon/Clip.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "polygon/Frame.hpp"
#include "polygon/Shapes.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;
using namespace test;

/// mm^2
double area_of(const GridPaths& paths) {
  double sum = 0;
  for (const GridPath& path : paths) sum += area(path) / fine_grid.per_mm / fine_grid.per_mm;
  return sum;
}

GridPaths on_grid(const Region& region) { return fine_grid.paths(region); }

bool repeats_a_point(const GridPath& path) {
  for (std::size_t i = 0; i < path.size(); ++i)
    if (std::find(path.begin(), path.begin() + static_cast<std::ptrdiff_t>(i), path[i]) !=
        path.begin() + static_cast<std::ptrdiff_t>(i))
      return true;
  return false;
}

TEST(Clip, UnitesCutsAndTakesAway) {
  const GridPaths a = on_grid({square({0, 0}, 2)}), b = on_grid({square({1, 1}, 2)});
  for (const auto clip : {clipped, clipped_strictly}) {
    EXPECT_DOUBLE_EQ(area_of(clip({a, b, SetOperation::united})), 7);
    EXPECT_DOUBLE_EQ(area_of(clip({a, b, SetOperation::common})), 1);
    EXPECT_DOUBLE_EQ(area_of(clip({a, b, SetOperation::without})), 3);
    EXPECT_DOUBLE_EQ(area_of(clip({b, a, SetOperation::without})), 3);
    EXPECT_TRUE(clip({a, a, SetOperation::without}).empty());
  }
}

TEST(Clip, FillsByItsRule) {
  const double r = 10, inner = r / (3 + std::sqrt(5.0)) * 2;
  const double star = 5 * r * inner * std::sin(pi / 5), pentagon = regular_area(5, inner);
  Polygon pentagram;
  for (int i = 0; i < 5; ++i) pentagram.push_back(r * turned({0, 1}, 4 * pi * i / 5));
  const double off = 1e-4;  // whole numbers: half a millionth along 100 mm
  const auto filled_area = [](const Polygon& polygon, FillRule rule) {
    return area_of(clipped({on_grid({polygon}), {}, SetOperation::united, rule}));
  };
  EXPECT_NEAR(filled_area(pentagram, FillRule::nonzero), star, off);
  EXPECT_NEAR(filled_area(pentagram, FillRule::evenodd), star - pentagon, off);
  EXPECT_NEAR(filled_area(pentagram, FillRule::positive), star, off);
  EXPECT_NEAR(filled_area(hole(pentagram), FillRule::nonzero), star, off);
  EXPECT_NEAR(filled_area(hole(pentagram), FillRule::evenodd), star - pentagon, off);
  EXPECT_NEAR(filled_area(hole(pentagram), FillRule::positive), 0, off);
}

// The table of SVG 1.1, section 11.3.
TEST(Clip, RulesSayWhatAWindingNumberFills) {
  for (const int turns : {-3, -2, -1, 0, 1, 2, 3}) {
    EXPECT_EQ(filled(turns, FillRule::nonzero), turns != 0) << turns;
    EXPECT_EQ(filled(turns, FillRule::evenodd), turns == 1 || turns == -1 || turns == 3 || turns == -3) << turns;
    EXPECT_EQ(filled(turns, FillRule::positive), turns >= 1) << turns;
  }
}

TEST(Clip, TurnsHolesClockwise) {
  const GridPaths plate = on_grid({square({0, 0}, 10)}), square_in = on_grid({square({3, 3}, 4)}),
                  island = on_grid({square({4, 4}, 2)});
  for (const auto clip : {clipped, clipped_strictly}) {
    GridPaths ring = clip({plate, square_in, SetOperation::without});
    ASSERT_EQ(ring.size(), 2U);
    std::sort(ring.begin(), ring.end(), [](const GridPath& a, const GridPath& b) { return area(a) > area(b); });
    EXPECT_DOUBLE_EQ(area(ring[0]) / 1e12, 100);
    EXPECT_DOUBLE_EQ(area(ring[1]) / 1e12, -16);
    const GridPaths with_island = clip({ring, island, SetOperation::united, FillRule::nonzero});
    EXPECT_EQ(std::count_if(with_island.begin(), with_island.end(), [](const GridPath& p) { return area(p) > 0; }), 2);
    EXPECT_DOUBLE_EQ(area_of(with_island), 88);
  }
}

// Four squares about a square hole touch each other at their corners; an outline that runs through a corner twice is
// none that a closed boundary may have.
TEST(Clip, StrictlyNoOutlineTouchesItself) {
  const GridPaths about = on_grid({square({1, 0}, 1), square({0, 1}, 1), square({2, 1}, 1), square({1, 2}, 1)});
  const GridPaths strict = clipped_strictly({about, {}});
  EXPECT_DOUBLE_EQ(area_of(strict), 4);
  for (const GridPath& path : strict) EXPECT_FALSE(repeats_a_point(path));
  // A hole that touches the outer outline in one point.
  const GridPaths bitten = clipped_strictly(
      {on_grid({square({0, 0}, 4)}), on_grid({{{2, 0}, {3, 1}, {2, 2}, {1, 1}}}), SetOperation::without});
  EXPECT_DOUBLE_EQ(area_of(bitten), 14);
  for (const GridPath& path : bitten) EXPECT_FALSE(repeats_a_point(path));
}

TEST(Clip, LeavesOutWhatHasNoInside) {
  const GridPaths nothing{{}, {{0, 0}}, {{0, 0}, {5, 5}}, {{0, 0}, {5, 0}, {10, 0}}, {{1, 1}, {1, 1}, {1, 1}, {1, 1}}};
  for (const auto clip : {clipped, clipped_strictly}) {
    EXPECT_TRUE(clip({nothing, {}}).empty());
    EXPECT_TRUE(clip({{}, {}}).empty());
    GridPaths with_square = nothing;
    with_square.push_back(fine_grid.path(square({0, 0}, 3)));
    EXPECT_DOUBLE_EQ(area_of(clip({with_square, nothing, SetOperation::without})), 9);
  }
}

// As far out as the grid goes the answer is as exact as its whole numbers.
TEST(Clip, IsExactToTheEdgeOfTheGrid) {
  const double far = 9.0071e9;  // mm; the grid ends at 9.0072e9
  for (const Point corner : {Point{far, far}, Point{-far, far}}) {
    const GridPaths a = on_grid({square(corner, 2)}), b = on_grid({square(corner + Point{1, 1}, 2)});
    const GridPaths both = clipped({a, b, SetOperation::common});
    ASSERT_EQ(both.size(), 1U);
    const Polygon found = fine_grid.polygon(both[0]);
    Box box;
    for (const Point p : found) box.add(p);
    EXPECT_NEAR(distance(box.low, corner + Point{1, 1}), 0, 1e-5);
    EXPECT_NEAR(distance(box.high, corner + Point{2, 2}), 0, 1e-5);
  }
}

// A frame round the plane's part: a clockwise outline in it is a hole of what goes round it.
TEST(Frame, StandsForWhatGoesRound) {
  const Polygon inner = square({0, 0}, 2);
  const Frame frame(bounds(Region{inner}).grown(5), fine_grid);
  for (const int turns : {-2, -1, 0, 1, 2}) {
    ClipJob job{on_grid({hole(inner)}), {}, SetOperation::united, FillRule::nonzero};
    frame.add(turns, job.subject);
    EXPECT_EQ(job.subject.size(), 1U + std::abs(turns));
    GridPaths answer = clipped(job);
    frame.take_off(answer);
    EXPECT_DOUBLE_EQ(area_of(answer), turns == 0 ? 4 : turns == 1 ? -4 : 0) << turns;
  }
}

}  // namespace
}  // namespace sagitta
