// Heights that are as good as one, of floors and of crowns. Expected values by hand.

#include "plan/Floors.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "plan/Feature.hpp"

namespace sagitta {
namespace {

TEST(Floors, HeightsCloserThanTheRuleStandForTheLeast) {
  Floors floors;
  for (const double z : {4.0, 4 - 1e-5, 4 - 2.5e-5, 4 - 2e-4}) floors.add(z);
  EXPECT_EQ(floors.canonical(4), 4 - 2.5e-5);
  EXPECT_EQ(floors.canonical(4 - 1e-5), 4 - 2.5e-5);
  EXPECT_EQ(floors.canonical(4 - 2e-4), 4 - 2e-4);
  EXPECT_DOUBLE_EQ(floors.most_lowered(), 4 - (4 - 2.5e-5));
}

Surface round() {
  Surface surface;
  surface.thickness = 6;
  surface.r0 = 300;
  return surface;
}

/// A board 100 by 40 mm and 6 mm thick of radius 300 mm. A slot 20 mm wide follows the surface 2 mm under it, so its
/// floor's crown is at 4 mm; a pocket over it has its floor `below` that.
Plan slot_and_pocket(const Surface& surface, double below) {
  std::vector<Feature> features(3);
  features[0].role = Feature::Role::stock;
  features[0].loop = rectangle({0, -20}, {100, 20});
  features[1].kind = Source::Kind::slot;
  features[1].loop = rectangle({40, -30}, {60, 30});
  features[1].bound = {BoundingSurface::Kind::offset_surface, 2};
  features[2].kind = Source::Kind::pocket;
  features[2].shape = RoundedPolygon{{{50, 0}}, 15};
  features[2].bound = {BoundingSurface::Kind::level, 4 - below};
  WorkDone done;
  done.radius = done.outline = true;
  return std::get<Plan>(plan_of(surface, 6, Stage::board, done, features));
}

int crossings(const Plan& plan) {
  return static_cast<int>(std::count_if(plan.map.edges.begin(), plan.map.edges.end(), [](const PlanEdge& edge) {
    return edge.source.kind == Source::Kind::crossing;
  }));
}

TEST(Floors, AFloorAHairUnderACrownTouchesItOnTheCentreLine) {
  const Surface surface = round();
  for (const double below : {0.0, 1e-9, 7.9e-6, 8.1e-6, 2e-5}) {
    const Plan plan = slot_and_pocket(surface, below);
    EXPECT_EQ(crossings(plan), 0) << below;
    EXPECT_NEAR(plan.lowered, below, 1e-12);
  }
}

/// At 0.001 mm under the crown the two meet where the drop is 0.001 mm: y = sqrt(0.001 (600 - 0.001)) = 0.7746 mm.
TEST(Floors, AFloorClearlyUnderACrownCrossesItOnBothSides) {
  const Surface surface = round();
  const Plan plan = slot_and_pocket(surface, 1e-3);
  EXPECT_EQ(crossings(plan), 2);
  EXPECT_EQ(plan.lowered, 0);
  for (const PlanEdge& edge : plan.map.edges)
    if (edge.source.kind == Source::Kind::crossing) {
      EXPECT_NEAR(std::abs(plan.map.vertices[edge.from].y), 0.774596, 1e-6);
    }
}

}  // namespace
}  // namespace sagitta
