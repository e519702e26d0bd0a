// How far forms bend, against central differences of their heights; their charts against the plan's coordinates.

#include <gtest/gtest.h>

#include <cmath>

#include "surface/FormBend.hpp"
#include "surface/FormChart.hpp"

namespace sagitta {
namespace {

const ScallopedSpace spaces[] = {
    {1, 100, 0, 118, 0, 0.8}, {1, 100, 0.05, 116, 0.05, 0.6}, {1, 100, -0.1, 114, -0.16, 1}};

/// Largest second derivatives over the space, from y = -25 to 25; differences over 0.001 mm are right to 1e-6.
Bend measured(const ScallopedSpace& space) {
  constexpr double h = 1e-3;
  constexpr int looks = 60;
  Bend most;
  for (int i = 0; i <= looks; ++i)
    for (int k = 0; k <= looks; ++k) {
      const double y = 50.0 * k / looks - 25, x = space.x(static_cast<double>(i) / looks, y);
      const auto z = [&](double dx, double dy) { return space.below(x + dx * h, y + dy * h); };
      most.along = std::max(most.along, std::abs(z(1, 0) - 2 * z(0, 0) + z(-1, 0)) / (h * h));
      most.across = std::max(most.across, std::abs(z(0, 1) - 2 * z(0, 0) + z(0, -1)) / (h * h));
      most.mixed = std::max(most.mixed, std::abs(z(1, 1) - z(1, -1) - z(-1, 1) + z(-1, -1)) / (4 * h * h));
    }
  return most;
}

TEST(FormBend, IsNoLessThanAScallopsSecondDerivativesAndLittleMore) {
  for (const ScallopedSpace& space : spaces) {
    const Bend bound = bend_of(space, -25, 25), found = measured(space);
    constexpr double small = 1e-6, loose = 2;
    EXPECT_LE(found.along, bound.along + small);
    EXPECT_LE(found.mixed, bound.mixed + small);
    EXPECT_LE(found.across, bound.across + small);
    EXPECT_LE(bound.along, loose * found.along + small);
    EXPECT_LE(bound.mixed, loose * found.mixed + small);
    EXPECT_LE(bound.across, loose * found.across + small);
  }
}

/// Without lean the curvature at a trough's bottom is 2 d (pi / w)^2.
TEST(FormBend, OfASquareSpaceIsThatOfItsTrough) {
  const Bend bend = bend_of(spaces[0], -25, 25);
  EXPECT_NEAR(bend.along, 2 * 0.8 * std::pow(std::numbers::pi / 18, 2), 1e-12);
  EXPECT_EQ(bend.mixed, 0);
  EXPECT_EQ(bend.across, 0);
}

TEST(FormChart, GivesTheParametersOfItsPlacesBack) {
  Surface surface;
  surface.thickness = 6;
  surface.r0 = 300;
  surface.scallops.assign(std::begin(spaces), std::end(spaces));
  surface.worked_edges = {{-1, 25, 0.01, 0, 1.2, 0.7}, {1, 26, 0.012, 1.5}};
  const auto expect_back = [](const FormChart& form, double u, double v) {
    const Point p = std::visit([&](const auto& chart) { return chart.at(u, v); }, form);
    const double above = std::visit([&](const auto& chart) { return chart.rise(v); }, form);
    const auto back = std::visit([&](const auto& chart) { return chart.parameters(p.x, p.y, above); }, form);
    EXPECT_NEAR(back[0], u, 1e-12 * (1 + std::abs(u)));
    EXPECT_NEAR(back[1], v, 1e-12 * (1 + std::abs(v)));
  };
  for (const double u : {0.5, 9.0, 17.0})
    for (const double v : {0.2, 1.1, 2.2}) {
      for (const int form : {1, 2, 3, -1}) expect_back(chart_of_form(surface, form), u, v);
      expect_back(chart_of_roll(surface, 1), u, v);
    }
  const RollChart roll = std::get<RollChart>(chart_of_roll(surface, 1));
  EXPECT_NEAR(roll.at(10, 1.5 * std::numbers::pi / 2).y, 26 + 0.012 * 10, 1e-12);  // upright at the edge
  EXPECT_NEAR(roll.rise(0), 1.5, 1e-15);
}

}  // namespace
}  // namespace sagitta
