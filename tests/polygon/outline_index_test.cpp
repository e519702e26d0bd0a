// The outline's nearest point, against closed forms and against every side asked in turn.

#include <gtest/gtest.h>

#include <algorithm>

#include "polygon/OutlineIndex.hpp"
#include "polygon/Shapes.hpp"

namespace sagitta {
namespace {

using namespace test;

TEST(OutlineIndex, FindsTheNearestPointOfASquare) {
  const OutlineIndex index({square({0, 0}, 10)});
  const auto is = [&](Point p, double away, Point at) {
    const OutlineIndex::Nearest found = index.nearest(p);
    EXPECT_NEAR(found.distance, away, 1e-12);
    EXPECT_NEAR(distance(found.p, at), 0, 1e-12);
  };
  is({5, 1}, 1, {5, 0});
  is({9, 4}, 1, {10, 4});
  is({13, 14}, 5, {10, 10});
  is({-1000, 5}, 1000, {0, 5});
  is({3, 0}, 0, {3, 0});
  EXPECT_TRUE(index.reaches({5, 1}, 1.0000001));
  EXPECT_FALSE(index.reaches({5, 1}, 0.9999999));
  EXPECT_TRUE(index.reaches({13, 14}, 5.0000001));
  EXPECT_FALSE(index.reaches({13, 14}, 4.9999999));
}

TEST(OutlineIndex, OfNothingIsInfinitelyFar) {
  const OutlineIndex index(Region{});
  EXPECT_GE(index.nearest({0, 0}).distance, 1e300);
  EXPECT_FALSE(index.reaches({0, 0}, 1e100));
  const OutlineIndex point(Region{{{2, 2}}});
  EXPECT_DOUBLE_EQ(point.nearest({5, 6}).distance, 5);
}

double to_side(Point p, Point a, Point b) {
  const double square = dot(b - a, b - a);
  return distance(p, between(a, b, square > 0 ? std::clamp(dot(p - a, b - a) / square, 0.0, 1.0) : 0));
}

TEST(OutlineIndex, FindsWhatEverySideAskedInTurnFinds) {
  Region star;
  for (const Point centre : {Point{0, 0}, Point{60, 3}}) {
    star.push_back(regular(600, 10, centre));
    for (std::size_t i = 0; i < star.back().size(); i += 2)
      star.back()[i] = centre + (0.3 + 0.001 * static_cast<double>(i)) * (star.back()[i] - centre);
  }
  const OutlineIndex index(star);
  for (int i = 0; i < 400; ++i) {
    const Point p{-30 + 0.31 * i, 17 - 0.173 * (i * 7 % 199)};
    double best = 1e300;
    for (const Polygon& polygon : star)
      for (std::size_t k = 0; k < polygon.size(); ++k)
        best = std::min(best, to_side(p, polygon[k], polygon[k + 1 < polygon.size() ? k + 1 : 0]));
    EXPECT_NEAR(index.nearest(p).distance, best, 1e-9) << i;
    EXPECT_TRUE(index.reaches(p, best + 1e-9)) << i;
    EXPECT_FALSE(index.reaches(p, best - 1e-9)) << i;
  }
}

TEST(OutlineIndex, TellsWhichOutlinesComeNear) {
  const OutlineIndex index({square({0, 0}, 10)});
  EXPECT_TRUE(index.reaches(Region{square({10.4, 0}, 5)}, 0.5));
  EXPECT_FALSE(index.reaches(Region{square({11.1, 0}, 5)}, 0.5)) << "further than that and half a millimetre";
  EXPECT_FALSE(index.reaches(Region{square({3, 3}, 4)}, 2)) << "its outline lies 3 off, within";
}

}  // namespace
}  // namespace sagitta
