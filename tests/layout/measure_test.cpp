#include "layout/Measure.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "board/Length.hpp"

/// Lengths of messages: to 0.01 mm or 0.0001 in, never 0 for what is not, and rounded to the side that is asked for.

namespace sagitta {
namespace {

Board board_in(Units units) {
  Board board;
  board.units = units;
  return board;
}

double read(const std::string& text, Units units) { return std::get<Length>(read_length(text, units)).mm; }

TEST(Measure, TellsHundredthsOfAMillimetreAndTenThousandthsOfAnInch) {
  const Board mm = board_in(Units::mm), inches = board_in(Units::inch);
  EXPECT_EQ(in_units(mm, 12.3456), "12.35 mm");
  EXPECT_EQ(in_units(mm, 12), "12 mm");
  EXPECT_EQ(in_units(inches, 12.7), "0.5 in");
  EXPECT_EQ(in_units(inches, 1), "0.0394 in");  // 1 / 25.4 = 0.03937
  EXPECT_EQ(in_units(mm, 0), "0 mm");
}

TEST(Measure, ASmallLengthIsNotNothing) {
  EXPECT_EQ(in_units(board_in(Units::mm), 0.0004), "0.0004 mm");
  EXPECT_EQ(in_units(board_in(Units::mm), -0.0004), "-0.0004 mm");
  EXPECT_EQ(in_units_down(board_in(Units::mm), 0.0004), "0.0004 mm");
  EXPECT_EQ(in_units(board_in(Units::inch), 0.000254), "0.00001 in");
}

TEST(Measure, RoundsUpAndDownByLessThanAStep) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> length(0.02, 700);
  for (const Units units : {Units::mm, Units::inch})
    for (int i = 0; i < 2000; ++i) {
      const double mm = length(random), step = units == Units::mm ? 0.01 : 0.00254;
      const double up = read(in_units_up(board_in(units), mm), units);
      const double down = read(in_units_down(board_in(units), mm), units);
      EXPECT_TRUE(up >= mm - 1e-9 && up < mm + step) << mm;
      EXPECT_TRUE(down <= mm + 1e-9 && down > mm - step) << mm;
    }
}

TEST(Measure, WhatIsAStepAlreadyStaysWhatItIs) {
  EXPECT_EQ(in_units_up(board_in(Units::mm), 0.1 + 0.2), "0.3 mm");
  EXPECT_EQ(in_units_down(board_in(Units::mm), 0.1 + 0.7), "0.8 mm");
  EXPECT_EQ(in_units_up(board_in(Units::inch), 25.4 * 0.0625), "0.0625 in");
}

}  // namespace
}  // namespace sagitta
