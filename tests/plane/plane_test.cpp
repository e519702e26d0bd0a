// Closed forms of school geometry: areas of discs and sectors, winding by the definition.

#include "plane/Plane.hpp"

#include <gtest/gtest.h>

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;

TEST(CurveSegment, KeepsItsEndsExactly) {
  const Point a{1.1, 2.3}, b{-0.7, 4.9};
  const CurveSegment straight = line(a, b);
  EXPECT_EQ(straight.at(0), a);
  EXPECT_EQ(straight.at(1), b);
  const Point centre{0.1, 0.2};
  const Point from = centre + 3.0 * Point{std::cos(0.3), std::sin(0.3)};
  const Point to = centre + 3.0 * Point{std::cos(2.9), std::sin(2.9)};
  const CurveSegment bow = arc_between(centre, 3, from, to, true);
  EXPECT_EQ(bow.at(0), from);
  EXPECT_EQ(bow.at(1), to);
  EXPECT_NEAR(bow.sweep, 2.6, 1e-15);
  EXPECT_NEAR(arc_between(centre, 3, from, to, false).sweep, 2.6 - 2 * pi, 1e-15);
  EXPECT_EQ(bow.reversed().at(0), to);
}

TEST(CurveSegment, SlopeIsTheDifferenceQuotient) {
  const CurveSegment bow = arc({2, 1}, 5, 0.4, -1.7);
  const double h = 1e-6;
  const Point quotient = (1 / (2 * h)) * (bow.at(0.3 + h) - bow.at(0.3 - h));
  EXPECT_NEAR(distance(bow.slope(0.3), quotient), 0, 1e-8);
}

TEST(CurveSegment, MirrorRunsThroughTheImages) {
  const CurveSegment bow = arc({2, 1}, 5, 0.4, 1.7);
  for (double t : {0.0, 0.25, 0.5, 1.0}) {
    const Point p = bow.at(t), q = bow.mirrored().at(t);
    EXPECT_NEAR(q.x, p.x, 1e-14);
    EXPECT_NEAR(q.y, -p.y, 1e-14);
    EXPECT_NEAR(distance(bow.reversed().at(1 - t), p), 0, 1e-14);
  }
}

TEST(Loop, AreaAndPerimeterAreClosedForms) {
  EXPECT_NEAR(area(circle({100, 50}, 3)), 9 * pi, 1e-12);
  EXPECT_NEAR(perimeter(circle({100, 50}, 3)), 6 * pi, 1e-13);
  EXPECT_DOUBLE_EQ(area(rectangle({1, 2}, {4, 6})), 12);
  EXPECT_DOUBLE_EQ(perimeter(rectangle({1, 2}, {4, 6})), 14);
  // A slice of cake: r^2 angle / 2.
  const CurveSegment bow = arc({0, 0}, 2, 0.2, 1.1);
  const Loop slice{line({0, 0}, bow.a), bow, line(bow.b, {0, 0})};
  EXPECT_NEAR(area(slice), 2 * 2 * 1.1 / 2, 1e-14);
  EXPECT_NEAR(area(mirrored(slice)), area(slice), 1e-14);
}

TEST(Loop, WindingOfADiscIsExactInsideAndOutside) {
  const Loop disc = circle({10, -4}, 2.5);
  EXPECT_EQ(winding(disc, {10, -4}), 1);  // on the shared chord
  for (int i = 0; i < 1000; ++i) {
    const double angle = 0.0063 * i;
    const Point n{std::cos(angle), std::sin(angle)};
    for (double r : {0.0, 1e-9, 1.0, 2.4999999})
      EXPECT_EQ(winding(disc, Point{10, -4} + r * n), 1) << angle << " " << r;
    for (double r : {2.5000001, 3.0, 100.0}) EXPECT_EQ(winding(disc, Point{10, -4} + r * n), 0) << angle << " " << r;
  }
  // Along the chord itself, where the two halves must agree.
  for (int i = -2499; i < 2500; ++i) EXPECT_EQ(winding(disc, {10 + i / 1000.0, -4}), 1);
  const Loop one{arc({0, 0}, 1, 0.7, 2 * pi)};
  EXPECT_EQ(winding(one, {0.2, -0.3}), 1);
  EXPECT_EQ(winding(one, {0.9, 0.9}), 0);
  EXPECT_EQ(winding({one[0].reversed()}, {0.2, -0.3}), -1);
}

TEST(Loop, WindingOfAHollowedRectangle) {
  // A square with a half disc bitten out of its top and another added at its bottom: area stays.
  const Loop loop{line({-2, 0}, {-1, 0}), arc_between({0, 0}, 1, {-1, 0}, {1, 0}, true),
                  line({1, 0}, {2, 0}),   line({2, 0}, {2, 3}),
                  line({2, 3}, {1, 3}),   arc_between({0, 3}, 1, {1, 3}, {-1, 3}, false),
                  line({-1, 3}, {-2, 3}), line({-2, 3}, {-2, 0})};
  EXPECT_NEAR(area(loop), 12, 1e-14);
  EXPECT_EQ(winding(loop, {0, -0.5}), 1);
  EXPECT_EQ(winding(loop, {0, 0}), 1);
  EXPECT_EQ(winding(loop, {0, 2.5}), 0);
  EXPECT_EQ(winding(loop, {0, 1.9}), 1);
  EXPECT_EQ(winding(loop, {1.5, 2.5}), 1);
  EXPECT_EQ(winding(loop, {0, -1.1}), 0);
  EXPECT_EQ(winding(loop, {-3, 0}), 0);
  EXPECT_EQ(winding(loop, {-3, 3}), 0);
}

TEST(Loop, WindingTurnsTwiceInADoubleLoop) {
  Loop twice = circle({0, 0}, 1);
  for (const CurveSegment& segment : circle({0, 0}, 2)) twice.push_back(segment);
  EXPECT_EQ(winding(twice, {0.5, 0}), 2);
  EXPECT_EQ(winding(twice, {1.5, 0}), 1);
}

TEST(Box, HoldsTheArcsExtremes) {
  const Box quarter = bounds(arc({1, 1}, 2, 0.25 * pi, 0.5 * pi));
  EXPECT_DOUBLE_EQ(quarter.high.y, 3);
  EXPECT_NEAR(quarter.low.y, 1 + std::sqrt(2.0), 1e-15);
  EXPECT_NEAR(quarter.high.x, 1 + std::sqrt(2.0), 1e-15);
  const Box back = bounds(arc({1, 1}, 2, 0.25 * pi, -1.5 * pi));
  EXPECT_DOUBLE_EQ(back.low.y, -1);
  EXPECT_DOUBLE_EQ(back.low.x, -1);
  EXPECT_DOUBLE_EQ(back.high.x, 3);
  EXPECT_TRUE(quarter.overlaps(back));
  EXPECT_FALSE(bounds(rectangle({0, 0}, {1, 1})).overlaps(bounds(rectangle({2, 0}, {3, 1}))));
  EXPECT_TRUE(bounds(rectangle({0, 0}, {1, 1})).overlaps(bounds(rectangle({2, 0}, {3, 1})), 1));
}

}  // namespace
}  // namespace sagitta
