#include "plan/Arrangement.hpp"

#include <gmock/gmock.h>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

std::vector<InputCurve> strands_of(const std::vector<Loop>& loops) {
  std::vector<InputCurve> strands;
  for (int i = 0; i < static_cast<int>(loops.size()); ++i)
    for (const CurveSegment& segment : loops[i]) strands.push_back({segment, {Source::Kind::pocket, i, 0}, i});
  return strands;
}

double area_of(const Arrangement& arrangement, const std::vector<int>& cover) {
  double sum = 0;
  for (std::size_t f = 1; f < arrangement.map.faces.size(); ++f) {
    if (arrangement.covers[f] != cover) continue;
    for (const HalfEdge start : arrangement.map.faces[f].loops) {
      HalfEdge h = start;
      do {
        const PlanEdge& edge = arrangement.map.edges[h >> 1];
        const double half = (cross(edge.segment.a, edge.segment.b) +
                             (edge.segment.is_arc() ? edge.segment.radius * edge.segment.radius *
                                                          (edge.segment.sweep - std::sin(edge.segment.sweep))
                                                    : 0)) /
                            2;
        sum += h & 1 ? -half : half;
        h = arrangement.map.next[h];
      } while (h != start);
    }
  }
  return sum;
}

/// Euler's formula for a plane map: V - E + F = 1 + C with the outside counted as a face.
int components(const Subdivision& map) {
  return static_cast<int>(map.vertices.size()) - static_cast<int>(map.edges.size()) +
         static_cast<int>(map.faces.size()) - 1;
}

TEST(Arrangement, TwoDiscsShareTheLensOfTheTextbook) {
  // Lens of two unit discs a unit apart: 2 pi/3 - sqrt(3)/2. Any table of plane areas (circular segments).
  const Arrangement two = arrange(strands_of({circle({0, 0}, 1), circle({1, 0}, 1)}));
  const double lens = 2 * std::numbers::pi / 3 - std::sqrt(3) / 2;
  EXPECT_NEAR(area_of(two, {0, 1}), lens, 1e-14);
  EXPECT_NEAR(area_of(two, {0}), std::numbers::pi - lens, 1e-14);
  EXPECT_NEAR(area_of(two, {1}), std::numbers::pi - lens, 1e-14);
  EXPECT_EQ(components(two.map), 1);
}

TEST(Arrangement, AHoleIsAnInnerLoopOfTheFaceAroundIt) {
  const Arrangement ring = arrange(strands_of({rectangle({-5, -5}, {5, 5}), circle({0, 0}, 1)}));
  EXPECT_NEAR(area_of(ring, {0}), 100 - std::numbers::pi, 1e-12);
  EXPECT_NEAR(area_of(ring, {0, 1}), std::numbers::pi, 1e-14);
  EXPECT_EQ(components(ring.map), 2);
}

TEST(Arrangement, SidesThatRunTogetherAreOneEdge) {
  const Arrangement two = arrange(strands_of({rectangle({0, 0}, {2, 2}), rectangle({2, 1}, {4, 3})}));
  EXPECT_EQ(two.map.faces.size(), 3U);
  EXPECT_EQ(two.map.edges.size(), 9U);  // 4 + 4, both cut once, one edge shared
  EXPECT_NEAR(area_of(two, {0}), 4, 1e-14);
  EXPECT_NEAR(area_of(two, {1}), 4, 1e-14);
}

TEST(Arrangement, ATangentCircleTouchesInOneVertex) {
  const Arrangement touch = arrange(strands_of({rectangle({0, 0}, {10, 10}), circle({5, 2}, 2)}));
  int on_side = 0;
  for (const Point p : touch.map.vertices) on_side += std::abs(p.y) < tolerance::same && p.x > 1 && p.x < 9 ? 1 : 0;
  EXPECT_EQ(on_side, 1);
  EXPECT_NEAR(area_of(touch, {0, 1}), 4 * std::numbers::pi, 1e-13);
}

TEST(Arrangement, TheSameOutlineTwiceIsOneOutlineUnderTwoCovers) {
  const Arrangement twice = arrange(strands_of({circle({1, 2}, 3), circle({1, 2}, 3)}));
  EXPECT_EQ(twice.map.edges.size(), 2U);
  EXPECT_NEAR(area_of(twice, {0, 1}), 9 * std::numbers::pi, 1e-13);
}

TEST(Arrangement, AGridOfLinesHasTheFacesThatEulerAsksFor) {
  std::vector<InputCurve> strands = strands_of({rectangle({0, 0}, {8, 8})});
  for (int i = 1; i < 8; ++i) {
    strands.push_back({line({i * 1.0, -1}, {i * 1.0, 9}), {Source::Kind::fall, 1, 0}, -1});
    strands.push_back({line({-1, i * 1.0}, {9, i * 1.0}), {Source::Kind::fall, 2, 0}, -1});
  }
  const Arrangement grid = arrange(strands);
  EXPECT_EQ(grid.map.faces.size(), 65U);
  EXPECT_EQ(components(grid.map), 1);
  EXPECT_NEAR(area_of(grid, {0}), 64, 1e-12);
}

}  // namespace
}  // namespace sagitta
