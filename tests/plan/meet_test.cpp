#include "plan/Meet.hpp"

#include <gtest/gtest.h>

namespace sagitta {
namespace {

std::vector<Meeting> meetings(const CurveSegment& a, const CurveSegment& b) {
  std::vector<Meeting> found;
  meet(a, b, found);
  return found;
}

TEST(Meet, ChordOfACircle) {
  // Machinery's Handbook, 31st ed., p. 79: r 60, h 8 -> c 59.86 (2 sqrt(h (2r - h)), 59.8665).
  const auto found = meetings(line({52, -100}, {52, 100}), arc({0, 0}, 60, -1, 2));
  ASSERT_EQ(found.size(), 2U);
  EXPECT_NEAR(distance(found[0].p, found[1].p), 59.8665, 5e-5);
}

TEST(Meet, ALineTangentToACircleMeetsItOnce) {
  EXPECT_EQ(meetings(line({-5, 2}, {5, 2}), arc({0, 0}, 2, 0, std::numbers::pi)).size(), 1U);
  EXPECT_TRUE(meetings(line({-5, 2.001}, {5, 2.001}), arc({0, 0}, 2, 0, std::numbers::pi)).empty());
  EXPECT_EQ(meetings(line({-5, 1.999}, {5, 1.999}), arc({0, 0}, 2, 0, std::numbers::pi)).size(), 2U);
}

TEST(Meet, CirclesThatTouchMeetOnceFromOutsideAndInside) {
  const CurveSegment upper = arc({0, 0}, 2, 0, std::numbers::pi);
  EXPECT_EQ(meetings(upper, arc({0, 3}, 1, -std::numbers::pi, std::numbers::pi)).size(), 1U);
  EXPECT_EQ(meetings(upper, arc({0, 1}, 1, 0, std::numbers::pi)).size(), 1U);
}

TEST(Meet, PiecesThatRunTogetherMeetAtTheEndsThatLieOnTheOther) {
  const auto found = meetings(line({0, 0}, {10, 0}), line({4, 0}, {20, 0}));
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].p, (Point{10, 0}));
  EXPECT_EQ(found[1].p, (Point{4, 0}));
  EXPECT_DOUBLE_EQ(found[1].on_first, 0.4);
}

TEST(Meet, OnlyTheDrawnPartCounts) {
  EXPECT_TRUE(meetings(line({0, 0}, {1, 0}), line({2, -1}, {2, 1})).empty());
  EXPECT_TRUE(meetings(arc({0, 0}, 1, 0, 1), line({-1, -2}, {-1, 2})).empty());
}

}  // namespace
}  // namespace sagitta
