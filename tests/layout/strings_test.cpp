// Strings in courses: places by hand arithmetic.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "layout/SampleBoards.hpp"

namespace sagitta {
namespace {

using namespace samples;
using testing::ElementsAre;
using testing::IsEmpty;

Board in_courses(int count, int course, double gap) {
  Board board = octaves();
  board.strings.count = count;
  board.strings.course = course;
  board.strings.course_gap = gap;
  return board;
}

void expect_places(const Layout& layout, const std::vector<double>& nut, const std::vector<double>& saddle) {
  ASSERT_EQ(layout.strings.size(), nut.size());
  for (std::size_t i = 0; i < nut.size(); ++i) {
    EXPECT_NEAR(layout.strings[i].a.y, nut[i], 1e-12) << i;
    EXPECT_NEAR(layout.strings[i].b.y, saddle[i], 1e-12) << i;
    EXPECT_EQ(layout.strings[i].a.x, 0);
    EXPECT_EQ(layout.strings[i].b.x, 400);
  }
}

/// 50 at the nut: the outer courses' middles lie at 24, the others every 16. 56 at the saddle: at 27, every 18.
TEST(Courses, HaveEqualCentres) {
  Board board = in_courses(8, 2, 2);
  board.strings.saddle_spread = 56;
  expect_places(sound(board), {-25, -23, -9, -7, 7, 9, 23, 25}, {-28, -26, -10, -8, 8, 10, 26, 28});
}

/// The outer courses' middles lie at 25 - 3 = 22.
TEST(Courses, OfThree) {
  expect_places(sound(in_courses(9, 3, 3)), {-25, -22, -19, -3, 0, 3, 19, 22, 25},
                {-25, -22, -19, -3, 0, 3, 19, 22, 25});
}

/// Of 50 mm, four courses take 2 each; half gauges at the three gaps 0.8, 0.5 and 0.35; 40.35 are left for three.
TEST(Courses, HaveEqualGapsBetweenFacingStrings) {
  Board board = in_courses(8, 2, 2);
  board.strings.spacing = StringSpacing::equal_gaps;
  board.strings.gauges = {1.1, 1, 0.6, 0.6, 0.4, 0.4, 0.3, 0.3};
  const double air = 40.35 / 3;
  const std::vector<double> y{
      -25, -23, -23 + air + 0.8, -21 + air + 0.8, -21 + 2 * air + 1.3, -19 + 2 * air + 1.3, -19 + 3 * air + 1.65, 25};
  EXPECT_NEAR(y[6], 23, 1e-12);
  expect_places(sound(board), y, y);
}

TEST(Courses, AreFurtherApartThanTheirStrings) {
  Board board = in_courses(4, 2, 1.99);  // middles at 3 - 0.995: the inner strings are 2.02 apart
  board.strings.nut_spread = 6;
  EXPECT_THAT(fault_keys(board), IsEmpty());
  board.strings.course_gap = 2;  // 2 apart
  EXPECT_THAT(fault_keys(board), ElementsAre("strings.course_gap"));
  std::swap(board.strings.nut_spread, board.strings.saddle_spread);
  EXPECT_THAT(fault_keys(board), ElementsAre("strings.course_gap"));
}

TEST(Courses, AreWholeAndAtLeastTwo) {
  EXPECT_THAT(fault_keys(in_courses(9, 2, 2)), ElementsAre("strings.count"));
  EXPECT_THAT(fault_keys(in_courses(2, 2, 2)), ElementsAre("strings.count"));
  Board board = in_courses(8, 2, 2);
  board.strings.course_gap.reset();
  EXPECT_THAT(fault_keys(board), ElementsAre("strings.course_gap"));
}

}  // namespace
}  // namespace sagitta
