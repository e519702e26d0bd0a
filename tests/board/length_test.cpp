// Lengths as builders write them. An inch is 25.4 mm exactly (international yard and pound agreement, 1959).

#include "board/Length.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>

namespace sagitta {
namespace {

double mm(const std::string& text, Units units = Units::mm) {
  const auto read = read_length(text, units);
  if (const auto* error = std::get_if<LengthError>(&read)) {
    ADD_FAILURE() << text << ": " << error->message;
    return -1;
  }
  return std::get<Length>(read).mm;
}

TEST(Length, PlainValues) {
  EXPECT_EQ(mm("648"), 648);
  EXPECT_EQ(mm("6.35 mm"), 6.35);
  EXPECT_EQ(mm("6.35mm"), 6.35);
  EXPECT_EQ(mm("1 in"), 25.4);
  EXPECT_EQ(mm("0.023 in"), 0.5842);
  EXPECT_EQ(mm(".5 in"), 12.7);
  EXPECT_EQ(mm("2 inches"), 50.8);
  EXPECT_EQ(mm("2\""), 50.8);
  EXPECT_EQ(mm("2 cm"), 20);
  EXPECT_EQ(mm("25.5", Units::inch), 647.7);
  EXPECT_EQ(mm("6.35 mm", Units::inch), 6.35);
  EXPECT_EQ(mm("-3 mm"), -3);
  EXPECT_EQ(mm("1e2"), 100);
}

TEST(Length, Fractions) {
  EXPECT_EQ(mm("25 1/2 in"), 647.7);
  EXPECT_EQ(mm("1-11/16 in"), 42.8625);
  EXPECT_EQ(mm("1 11/16", Units::inch), 42.8625);
  EXPECT_EQ(mm("11/16 in"), 17.4625);
  EXPECT_EQ(mm("3/32\""), 2.38125);
  EXPECT_EQ(mm("1-11/16"), 1.6875);
  EXPECT_EQ(mm("-1-1/2 in"), -38.1);
}

TEST(Length, Expressions) {
  EXPECT_EQ(mm("648/2"), 324);
  EXPECT_EQ(mm("648 mm / 2"), 324);
  EXPECT_EQ(mm("25 1/2 in / 2"), 647.7 / 2);
  EXPECT_EQ(mm("2 * (3 + 4 mm)"), 14);
  EXPECT_EQ(mm("1 in + 3"), 28.4);
  EXPECT_EQ(mm("3 + 1 mm", Units::inch), 77.2);
  EXPECT_EQ(mm("1 - 11/16"), 0.3125);
  EXPECT_EQ(mm("10 - 2 - 3"), 5);
  EXPECT_EQ(mm("2 + 3 * 4"), 14);
  EXPECT_EQ(mm("-(2 + 3)"), -5);
}

TEST(Length, SaysWhatWasWritten) {
  const auto plain = std::get<Length>(read_length("25 1/2 in", Units::mm));
  EXPECT_TRUE(plain.plain);
  EXPECT_TRUE(plain.fraction);
  EXPECT_EQ(plain.unit, Units::inch);
  const auto sum = std::get<Length>(read_length("2 + 3", Units::mm));
  EXPECT_FALSE(sum.plain);
  EXPECT_FALSE(sum.unit);
  EXPECT_TRUE(std::get<Length>(read_length("1200 mm/min", Units::mm)).per_minute);
}

TEST(Length, ErrorsSayWhere) {
  const auto column = [](const std::string& text) {
    const auto read = read_length(text, Units::mm);
    const auto* error = std::get_if<LengthError>(&read);
    EXPECT_NE(error, nullptr) << text;
    return error == nullptr ? 0 : error->column;
  };
  EXPECT_EQ(column(""), 1);
  EXPECT_EQ(column("abc"), 1);
  EXPECT_EQ(column("3 furlongs"), 3);
  EXPECT_EQ(column("3,5 mm"), 2);
  EXPECT_EQ(column("3 mm * 2 mm"), 12);
  EXPECT_EQ(column("3 / 2 mm / 1 mm"), 9);
  EXPECT_EQ(column("(3 + 4"), 7);
  EXPECT_EQ(column("3 +"), 4);
  EXPECT_EQ(column("3 inn"), 3);
  EXPECT_NE(column("5 / 0"), 0);
  EXPECT_NE(column("5/0"), 0);
  EXPECT_NE(column("1e999"), 0);
  EXPECT_NE(column(std::string(5000, '(')), 0);
  EXPECT_NE(column(std::string(5000, '-') + "1"), 0);
}

TEST(Length, ShortestDecimalsReadBackExactly) {
  std::mt19937_64 random(1);
  std::uniform_real_distribution<double> exponent(-3, 4);
  int without_inches = 0;
  for (int i = 0; i < 20000; ++i) {
    const double value = std::pow(10, exponent(random));
    EXPECT_EQ(mm(decimal(value)), value);
    if (const auto inches = bare_length(value, Units::inch)) {
      EXPECT_EQ(mm(*inches, Units::inch), value);
    } else {
      ++without_inches;
    }
  }
  EXPECT_GT(without_inches, 0);
  EXPECT_EQ(decimal(647.7), "647.7");
  EXPECT_EQ(decimal(0.1), "0.1");
  EXPECT_EQ(bare_length(647.7, Units::inch), "25.5");
  EXPECT_EQ(bare_length(0.5842, Units::inch), "0.023");
}

TEST(Length, InchFractions) {
  EXPECT_EQ(inch_fraction(647.7), "25 1/2");
  EXPECT_EQ(inch_fraction(42.8625), "1 11/16");
  EXPECT_EQ(inch_fraction(25.4), "1");
  EXPECT_EQ(inch_fraction(0), "0");
  EXPECT_EQ(inch_fraction(25.4 / 64), "1/64");
  EXPECT_EQ(inch_fraction(-12.7), "-1/2");
  EXPECT_EQ(inch_fraction(25.4 / 128), std::nullopt);
  EXPECT_EQ(shown_length(647.7, Units::inch), "25.5 in");
  EXPECT_EQ(shown_length(6.35, Units::mm), "6.35 mm");
  EXPECT_EQ(shown_length(-0.00001, Units::mm), "0 mm");
}

}  // namespace
}  // namespace sagitta
