// Ovals and through slots that only touch: where they touch is known from the support function of an ellipse,
// h(n) = sqrt(a^2 cos^2 + b^2 sin^2) of the angle between n and its longer axis, and of its parallel curve, h + off.

#include <gmock/gmock.h>

#include <numbers>

#include "Touched.hpp"
#include "inlay/Oval.hpp"
#include "plan/Contact.hpp"
#include "plan/OutlineContact.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

using test::outline_of;
using test::slot;

constexpr double stray = 1e-7;  // of the arcs that stand for an ellipse, mm
constexpr double a = 12, b = 7, off = 0.05;
constexpr double misses[] = {0.0, 5e-5, -5e-5, 1e-12};

/// Where the normal has that angle.
Point place_facing(double angle) {
  const Point n{std::cos(angle), std::sin(angle)};
  return (1 / std::hypot(a * n.x, b * n.y)) * Point{a * a * n.x, b * b * n.y} + off * n;
}

double support(double angle) { return std::hypot(a * std::cos(angle), b * std::sin(angle)) + off; }

CurveSegment placed(CurveSegment arc, double turn, Point at) {
  for (Point* p : {&arc.a, &arc.b, &arc.centre}) *p = turned(*p, turn) + at;
  arc.start += turn;
  return arc;
}

/// Its longer axis at `turn` from +x.
Feature oval(Point at, double turn) {
  Feature f;
  f.kind = Source::Kind::pocket;
  f.name = "oval at " + std::to_string(at.x);
  f.bound = {BoundingSurface::Kind::level, 4, false};
  f.drawn = true;
  for (const CurveSegment& arc : Oval{a, b, 0}.outline(off, stray)) f.loop.push_back(placed(arc, turn, at));
  f.ellipse = OffsetEllipse{Ellipse{at, turned({a, 0}, turn), b / a}, off};
  return f;
}

/// The curve that the feature names is the one that its arcs follow.
void expect_its_arcs_follow_its_ellipse(const Feature& feature) {
  for (const CurveSegment& arc : feature.loop) EXPECT_LT(feature.ellipse->distance_to(arc.at(0.5)), 2 * stray);
}

TEST(OutlineContact, AnOvalThatOnlyTouchesASlotLeavesTheSnapWhicheverWayItIsTurned) {
  for (const double turn : {0.0, 0.5, std::numbers::pi / 2, -1.2})
    for (const double miss : misses) {
      std::vector<Feature> features{slot(0, 0.5), oval({0.5 + support(turn) + miss, 3}, turn)};
      EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
      EXPECT_NEAR(bounds(features[1].loop).low.x, 0.5 + tolerance::snap, 1e-9);
      expect_its_arcs_follow_its_ellipse(features[1]);
    }
}

TEST(OutlineContact, WhatClearlyCutsOrClearlyMissesStaysAsDrawn) {
  for (const double miss : {1e-3, -1e-3, 2.0}) {
    std::vector<Feature> features{slot(0, 0.5), oval({0.5 + support(0.4) + miss, 0}, 0.4)};
    const Loop before = features[1].loop;
    EXPECT_TRUE(settle_contacts(features, tolerance::snap).empty());
    EXPECT_EQ(features[1].loop, before);
  }
}

TEST(OutlineContact, AnOvalBetweenTwoSlotsLeavesTheSnapOnBothSides) {
  std::vector<Feature> features{slot(-0.5, 0), slot(2 * support(0), 40), oval({support(0), 0}, 0)};
  features[1].name = "the other slot";
  EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 2U);
  const Box box = bounds(features[2].loop);
  EXPECT_NEAR(box.low.x, tolerance::snap, 1e-9);
  EXPECT_NEAR(box.high.x, 2 * support(0) - tolerance::snap, 1e-9);
}

TEST(OutlineContact, OfTwoOvalsThatTouchTheLaterGivesWay) {
  for (const double turn : {0.0, 0.7})
    for (const double miss : misses) {
      const Point n{std::cos(0.3), std::sin(0.3)};
      std::vector<Feature> features{oval({0, 0}, turn),
                                    oval(2 * turned(place_facing(0.3 - turn), turn) + miss * n, turn)};
      const Loop first = features[0].loop;
      EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
      EXPECT_EQ(features[0].loop, first);
      double reach = 1e300;  // of the second along n
      for (const CurveSegment& arc : features[1].loop)
        for (int i = 0; i <= 1000; ++i) reach = std::min(reach, dot(arc.at(i / 1000.0), n));
      EXPECT_NEAR(reach, support(0.3 - turn) + tolerance::snap, 1e-6);
    }
}

TEST(OutlineContact, AnOvalThatTouchesTheOutlineFromInsideLeavesTheSnap) {
  for (const double miss : misses) {
    const double reach = support(std::numbers::pi / 2 - 0.9);
    std::vector<Feature> features{outline_of(rectangle({-50, -28}, {50, 28})), oval({3, 28 - reach + miss}, 0.9)};
    EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
    EXPECT_NEAR(bounds(features[1].loop).high.y, 28 - tolerance::snap, 1e-9);
  }
}

TEST(OutlineContact, AnOvalThatTouchesARoundedCornerFromInsideLeavesTheSnap) {
  Loop outline;
  for (int i = 0; i < 4; ++i) outline.push_back(arc({0, 0}, 28, i * std::numbers::pi / 2, std::numbers::pi / 2));
  for (const double way : {0.4, 2.0, -0.9}) {
    const Point n{std::cos(way), std::sin(way)};
    std::vector<Feature> features{outline_of(outline), oval((28 - a - off) * n, way)};
    EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
    double most = 0;
    for (const CurveSegment& arc : features[1].loop) most = std::max({most, length(arc.a), length(arc.at(0.5))});
    EXPECT_NEAR(most, 28 - tolerance::snap, 1e-6);
  }
}

TEST(OutlineContact, AnOvalThatTouchesABlocksCornerLeavesTheSnap) {
  Feature block = oval({0, 0}, 0);
  block.drawn = false;
  block.ellipse.reset();
  block.loop.clear();
  block.shape = RoundedPolygon{{{a + off, 0}, {30, -9}, {30, 9}}, 0};
  std::vector<Feature> features{block, oval({0, 0}, 0)};
  EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
  EXPECT_NEAR(bounds(features[1].loop).high.x, a + off - tolerance::snap, 1e-9);
}

/// A hollow end whose arc touches the bridge side of the slot, and a notch whose tip does.
TEST(OutlineContact, AThroughSlotThatTouchesAnEndIsMadeNarrowerOnThatSide) {
  for (const double miss : misses) {
    const Point low{40, -30}, high{40, 30};
    const Loop hollow{line({-50, -30}, low), arc_between({20 + 0.5 + miss + 34, 0}, 34, low, high, false),
                      line(high, {-50, 30}), line({-50, 30}, {-50, -30})};
    const Loop notched{line({-50, -30}, low), line(low, {20.5 + miss, 4}), line({20.5 + miss, 4}, high),
                       line(high, {-50, 30}), line({-50, 30}, {-50, -30})};
    for (const Loop& end : {hollow, notched}) {
      std::vector<Feature> features{outline_of(end), slot(20, 20.5)};
      EXPECT_EQ(settle_contacts(features, tolerance::snap).size(), 1U);
      const Box box = bounds(features[1].loop);
      EXPECT_NEAR(box.high.x, 20.5 + miss - tolerance::snap, 1e-9);
      EXPECT_EQ(box.low.x, 20);
      EXPECT_NEAR(area(features[1].loop), 60 * (box.high.x - box.low.x), 1e-9);
    }
  }
}

TEST(OutlineContact, AThroughSlotThatLiesFlushWithAnEndIsLeftAsItIs) {
  std::vector<Feature> features{outline_of(rectangle({-50, -30}, {20.5, 30})), slot(20, 20.5)};
  EXPECT_TRUE(settle_contacts(features, tolerance::snap).empty());
  EXPECT_EQ(bounds(features[1].loop).high.x, 20.5);
}

/// Wood lies on one side of such a slot only: there is nothing to leave.
TEST(OutlineContact, AThroughSlotThatARoundEndTouchesFromOutsideIsLeftAsItIs) {
  const Loop round = circle({0, 0}, 20);
  for (const double x : {20.0, 19.5}) {
    std::vector<Feature> features{outline_of(round), slot(x, x + 0.5)};
    EXPECT_TRUE(settle_contacts(features, tolerance::snap).empty());
    EXPECT_EQ(bounds(features[1].loop).low.x, x);
  }
}

}  // namespace
}  // namespace sagitta
