#include "plan/Contact.hpp"

#include <gmock/gmock.h>

#include <numbers>

#include "Touched.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

using test::outline_of;
using test::slot;

Feature disc(Point centre, double radius) {
  Feature f;
  f.kind = Source::Kind::pocket;
  f.name = "disc at " + std::to_string(centre.x);
  f.bound = {BoundingSurface::Kind::level, 4, false};
  f.shape = RoundedPolygon{{centre}, radius};
  return f;
}

/// The rule (draw back so that 0.0001 mm of wood stays) is the project's own.
TEST(Contact, ADiscThatOnlyTouchesASlotIsDrawnBackByTheSnap) {
  for (const double miss : {0.0, 5e-5, -5e-5, 1e-12}) {
    std::vector<Feature> features{slot(0, 0.5), disc({5.5 + miss, 0}, 5)};
    const Faults notes = settle_contacts(features, tolerance::snap);
    EXPECT_NEAR(5.5 + miss - features[1].shape->radius - 0.5, tolerance::snap, 1e-12);
    EXPECT_EQ(notes.size(), 1U);
  }
}

TEST(Contact, WhatClearlyCutsOrClearlyMissesStaysAsDrawn) {
  for (const double miss : {1e-3, -1e-3, 0.3}) {
    std::vector<Feature> features{slot(0, 0.5), disc({5.5 + miss, 0}, 5)};
    EXPECT_TRUE(settle_contacts(features, tolerance::snap).empty());
    EXPECT_EQ(features[1].shape->radius, 5);
  }
}

TEST(Contact, ADiscThatReachesTheFarSideOfASlotTouchesItExactly) {
  std::vector<Feature> features{slot(0, 0.5), disc({5 + 3e-5, 0}, 5)};
  EXPECT_TRUE(settle_contacts(features, tolerance::snap).empty());
  EXPECT_NEAR(features[1].shape->radius, 5 + 3e-5, 1e-12);
}

TEST(Contact, APinThatTouchesAPocketsSideFromInsideIsMadeSmallerAndTold) {
  for (const double miss : {0.0, 5e-5, -5e-5}) {
    std::vector<Feature> features{disc({0, 0}, 0), disc({0, 3 + miss}, 2)};
    features[0].shape = RoundedPolygon{{{-8, -5}, {8, -5}, {8, 5}, {-8, 5}}, 0};
    features[1].role = Feature::Role::pin;
    features[1].kind = Source::Kind::pin;
    EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
    EXPECT_NEAR(5 - (3 + miss + features[1].shape->radius), tolerance::snap, 1e-12);
  }
}

TEST(Contact, ADotThatTouchesABlocksSideFromInsideIsMadeSmallerWhicheverComesFirst) {
  for (const double miss : {0.0, 5e-5, -5e-5})
    for (const std::size_t dot : {0U, 1U}) {
      std::vector<Feature> features(2, disc({0, 3 + miss}, 2));
      features[1 - dot].shape = RoundedPolygon{{{-8, -5}, {8, -5}, {8, 5}, {-8, 5}}, 0};
      const RoundedPolygon block = *features[1 - dot].shape;
      EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
      EXPECT_NEAR(5 - (3 + miss + features[dot].shape->radius), tolerance::snap, 1e-12);
      EXPECT_EQ(*features[1 - dot].shape, block);
    }
}

TEST(Contact, APinThatTouchesASlotsRoundEndFromInsideIsMadeSmallerAndTold) {
  for (const double miss : {0.0, 5e-5, -5e-5})
    for (const double turn : {0.0, 0.5, -1.5}) {
      const Point toward{std::sin(turn), std::cos(turn)};
      std::vector<Feature> features{disc({0, 0}, 0), disc({0, 9}, 0.3)};
      features[0].kind = Source::Kind::slot;
      features[0].shape = RoundedPolygon{{{0, -9}, {0, 9 - 0.05}}, 0.35};
      features[1].shape->core[0] = Point{0, 9 - 0.05} + (0.05 + miss) * toward;
      features[1].role = Feature::Role::pin;
      features[1].kind = Source::Kind::pin;
      EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
      EXPECT_NEAR(0.35 - (0.05 + miss + features[1].shape->radius), tolerance::snap, 1e-12);
    }
}

TEST(Contact, ADiscThatASlotsRoundEndTouchesFromInsideIsMadeLarger) {
  std::vector<Feature> features{disc({0, 0}, 0), disc({0, 5.65}, 4)};
  features[0].kind = Source::Kind::slot;
  features[0].shape = RoundedPolygon{{{0, -9}, {0, 9.3}}, 0.35};
  settle_contacts(features, tolerance::snap);
  EXPECT_NEAR(features[1].shape->radius, 4 + tolerance::snap, 1e-12);
}

TEST(Contact, OfTwoDiscsThatTouchTheLaterGivesWay) {
  std::vector<Feature> features{disc({0, 0}, 5), disc({10, 0}, 5)};
  EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
  EXPECT_EQ(features[0].shape->radius, 5);
  EXPECT_NEAR(features[1].shape->radius, 5 - tolerance::snap, 1e-12);
}

TEST(Contact, DiscsThatAreAsGoodAsEqualBecomeEqual) {
  std::vector<Feature> features{disc({0, 0}, 5), disc({2e-5, 0}, 5.00003)};
  EXPECT_TRUE(settle_contacts(features, tolerance::snap).empty());
  EXPECT_EQ(*features[1].shape, *features[0].shape);
}

TEST(Contact, ADiscTangentToTheOutlineFromInsideIsDrawnBack) {
  std::vector<Feature> features{outline_of(rectangle({-50, -28}, {50, 28})), disc({0, 23}, 5)};
  EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
  EXPECT_NEAR(features[1].shape->radius, 5 - tolerance::snap, 1e-12);
}

/// An outline of four quarter circles about the origin: each arc is asked about its own quarter, whatever angle it
/// begins at.
TEST(Contact, ADiscTangentToAnArcFromInsideIsDrawnBackInEachQuarter) {
  constexpr double quarter = std::numbers::pi / 2;
  for (const int turns : {-1, 0, 1})
    for (int k = 0; k < 4; ++k) {
      Loop outline;
      for (int i = 0; i < 4; ++i) outline.push_back(arc({0, 0}, 28, (i + 4 * turns) * quarter, quarter));
      const double middle = (k + 0.5) * quarter;
      std::vector<Feature> features{outline_of(outline), disc({23 * std::cos(middle), 23 * std::sin(middle)}, 5)};
      EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U) << k;
      EXPECT_NEAR(features[1].shape->radius, 5 - tolerance::snap, 1e-12) << k;
    }
}

TEST(Contact, ASideThatRunsAlongASlotsEdgeIsMovedOntoIt) {
  Feature block = disc({0, 0}, 0);
  block.shape = RoundedPolygon{{{0.5 + 4e-5, -5}, {10, -5}, {10, 5}, {0.5 + 4e-5, 5}}, 0};
  std::vector<Feature> features{slot(0, 0.5), block};
  EXPECT_TRUE(settle_contacts(features, tolerance::snap).empty());
  EXPECT_NEAR(-support(*features[1].shape, {-1, 0}), 0.5, 1e-12);
}

TEST(Contact, ABlindSlotIsShortenedNotThinned) {
  Feature blind = slot(0, 0.5);
  blind.shape = RoundedPolygon{{{10, -20}, {10, 20}}, 0.25};
  blind.loop.clear();
  std::vector<Feature> features{outline_of(rectangle({-50, -28}, {50, 20.25})), blind};
  EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
  EXPECT_EQ(features[1].shape->radius, 0.25);
  EXPECT_NEAR(features[1].shape->core[1].y, 20 - tolerance::snap, 1e-12);
  EXPECT_EQ(features[1].shape->core[0].y, -20);
}

TEST(Contact, TheSnapGrowsWithTheCoordinatesOfLongBoards) {
  Box near, far;
  near.add({400, 30});
  far.add({1100, 30});
  EXPECT_DOUBLE_EQ(snap_for(near), 1e-4);
  // A step of a 32-bit float from 1024 on is 2^-13 mm (IEEE 754).
  EXPECT_DOUBLE_EQ(snap_for(far), 2 * std::ldexp(1, -13));
}

}  // namespace
}  // namespace sagitta
