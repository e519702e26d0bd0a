#include "text/StepString.hpp"

#include <gtest/gtest.h>

namespace sagitta {
namespace {

// ISO 10303-21, 6.4.3: the apostrophe and the reverse solidus are doubled; \X2\ holds four hex digits a character,
// \X4\ eight, both end with \X0\.
TEST(StepString, FollowsTheStandardsStringRules) {
  EXPECT_EQ(step_string("heron-six board"), "heron-six board");
  EXPECT_EQ(step_string("it's a\\b"), "it''s a\\\\b");
  EXPECT_EQ(step_string("\xc3\xa4"), "\\X2\\00E4\\X0\\");
  EXPECT_EQ(step_string("\xe2\x82\xac"), "\\X2\\20AC\\X0\\");
  EXPECT_EQ(step_string("\xf0\x9d\x84\x9e"), "\\X4\\0001D11E\\X0\\");
  EXPECT_EQ(step_string("two\nlines"), "two lines");
}

TEST(StepString, SurvivesBytesThatAreNoText) {
  EXPECT_EQ(step_string("\xff"), "?");
  EXPECT_EQ(step_string("a\xc3"), "a?");
  EXPECT_EQ(step_string("\xe2\x82z"), "??z");
  EXPECT_EQ(step_string(""), "");
}

}  // namespace
}  // namespace sagitta
