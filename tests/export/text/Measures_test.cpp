#include "text/Measures.hpp"

#include <gtest/gtest.h>

namespace sagitta::test {
namespace {

// By hand: 1 11/16 in are 1.6875 of 25.4 mm; 0.3 in are no whole sixty-fourths.
TEST(StockLength, IsAFractionWhereItIsWholeSixtyFourths) {
  EXPECT_EQ(stock_length(Units::inch, 1.6875 * 25.4), "1 11/16 in");
  EXPECT_EQ(stock_length(Units::inch, 0.25 * 25.4), "1/4 in");
  EXPECT_EQ(stock_length(Units::inch, 12 * 25.4), "12 in");
  EXPECT_EQ(stock_length(Units::inch, 25.4 / 64), "1/64 in");
  EXPECT_EQ(stock_length(Units::inch, 0.3 * 25.4), "0.3 in");
  EXPECT_EQ(stock_length(Units::mm, 6.35), "6.35 mm");
}

}  // namespace
}  // namespace sagitta::test
