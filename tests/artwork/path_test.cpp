// The path data of SVG 1.1 (Second Edition), section 8.3. Coordinates marked M are from memory of the specification's
// examples.

#include <gtest/gtest.h>

#include "artwork/ReadArtwork.hpp"
#include "artwork/SvgPath.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;

std::vector<Trail> path(std::string_view data) {
  const auto read = read_path(data);
  if (const auto* error = std::get_if<PathError>(&read)) {
    ADD_FAILURE() << data << ": " << error->message << " at " << error->at;
    return {};
  }
  return std::get<0>(read);
}

/// What the first subpath encloses in the path's own units (y down, so clockwise on paper is positive).
double area_of(std::string_view data) {
  const std::vector<Trail> trails = path(data);
  if (trails.empty()) return 0;
  StrokeLoop strokes;
  for (const Curve& curve : trails.front().curves) draw(curve, {}, strokes);
  return area(strokes);
}

// 8.3.2 and 8.3.3, example triangle01 (M): "M 100 100 L 300 100 L 200 300 z".
TEST(SvgPath, Triangle01) {
  const auto trails = path("M 100 100 L 300 100 L 200 300 z");
  ASSERT_EQ(trails.size(), 1U);
  EXPECT_TRUE(trails[0].closed);
  EXPECT_EQ(trails[0].curves.size(), 3U);
  EXPECT_DOUBLE_EQ(area_of("M 100 100 L 300 100 L 200 300 z"), 200 * 200 / 2);
}

// 8.3.8, example arcs01 (M): a quarter of a pie, radius 150.
TEST(SvgPath, Arcs01IsThreeQuartersOfADisc) {
  EXPECT_NEAR(std::abs(area_of("M300,200 h-150 a150,150 0 1,0 150,-150 z")), 0.75 * pi * 150 * 150, 1e-8);
  EXPECT_NEAR(std::abs(area_of("M275,175 v-150 a150,150 0 0,0 -150,150 z")), 0.25 * pi * 150 * 150, 1e-8);
}

}  // namespace
}  // namespace sagitta
