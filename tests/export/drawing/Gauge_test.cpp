/// Gauges against closed forms. heron-six: radius 254 at the nut and 406 at the body end, linear between; spreads 35.5
/// and 52; edges 3.5 beside the outer strings.

#include <gtest/gtest.h>

#include <cmath>

#include "drawing/GaugeDrawing.hpp"
#include "export/CommandLine.hpp"
#include "input/PreparedFile.hpp"

namespace sagitta::test {
namespace {

PreparedBoard preset(const std::string& name) { return std::get<PreparedBoard>(prepare(preset_path(name).string())); }

TEST(Gauges, HaveTheBoardsRadiiAndWidths) {
  const std::vector<RadiusGauge> gauges = radius_gauges(preset("heron-six"));
  ASSERT_EQ(gauges.size(), 4U);
  const double end = 648 * (1 - std::exp2(-22 / 12.0)) + 10;
  const double places[] = {0, 648 * (1 - std::exp2(-7 / 12.0)), 324, end};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(gauges[i].x, places[i], 1e-9);
    EXPECT_NEAR(gauges[i].radius, 254 + (406 - 254) * places[i] / end, 1e-9);
    EXPECT_NEAR(gauges[i].width, 42.5 + 16.5 * places[i] / 648, 1e-9);
  }
}

// A circle through the outline's lower corners and the middle of its arc has the radius: (c^2 + 4 h^2) / 8 h.
TEST(Gauges, LowerSideIsTheArc) {
  for (const RadiusGauge& gauge : radius_gauges(preset("heron-six"))) {
    const Loop outline = gauge_outline(gauge, {10, 20}, 16);
    ASSERT_EQ(outline.size(), 4U);
    const double c = distance(outline[0].a, outline[0].b), h = 20 - outline[0].a.y;
    EXPECT_NEAR((c * c + 4 * h * h) / (8 * h), gauge.radius, 1e-6);
    EXPECT_NEAR(outline[0].at(0.5).y, 20, 1e-9);
    EXPECT_GT(area(outline), 0);
  }
}

TEST(Gauges, StripsHaveTheStringsPlaces) {
  const std::vector<StringStrip> strips = string_strips(preset("heron-six"));
  ASSERT_EQ(strips.size(), 2U);
  for (std::size_t i = 0; i < 6; ++i) {
    EXPECT_NEAR(strips[0].places[i], 35.5 * (static_cast<double>(i) / 5 - 0.5), 1e-9);
    EXPECT_NEAR(strips[1].places[i], 52 * (static_cast<double>(i) / 5 - 0.5), 1e-9);
  }
  EXPECT_EQ(gauge_drawing(preset("heron-six")).layers.size(), 6U);
}

}  // namespace
}  // namespace sagitta::test
