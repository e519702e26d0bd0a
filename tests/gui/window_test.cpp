/// The window itself: problems, sizes, text, commands, first run.

#include <gtest/gtest.h>

#include <set>

#include "app/Commands.hpp"
#include "decisions/Decisions.hpp"
#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

using viewer::Dialog;

TEST(Window, AProblemLeadsToItsField) {
  Hand hand;
  hand.open_group(7);
  hand.enter("Decisions/blank.length", "200");
  hand.wait();
  ASSERT_FALSE(hand.desk().results.model->faults.empty());
  ASSERT_EQ(viewer::plain_key(hand.desk().results.model->faults[0].key).substr(0, 5), "blank");
  hand.open_group(1);
  EXPECT_FALSE(hand.sees("Decisions/blank.length"));
  hand.click("Checks/problem 1");
  hand.frames(6);
  EXPECT_EQ(hand.desk().view.decision, 6);
  EXPECT_EQ(hand.desk().ui.led_to().substr(0, 16), "Decisions/blank.");
  EXPECT_TRUE(hand.see("Decisions/blank.length").in_view);
  ASSERT_NE(hand.desk().results.good, nullptr);  // the last board that could be built is still shown
  EXPECT_NE(hand.desk().results.good->board, hand.board());
}

/// Every panel is there and inside the window, and the last row of each group can be reached.
void reach_everything(Hand& hand) {
  const float w = static_cast<float>(hand.app().width()), h = static_cast<float>(hand.app().height());
  for (const char* panel : {"Bar", "Decisions", "Board", "Stages", "Status"}) {
    const viewer::Seen seen = hand.see(panel);
    EXPECT_GE(seen.low.x, 0) << panel;
    EXPECT_GE(seen.low.y, 0) << panel;
    EXPECT_LE(seen.high.x, w + 0.5f) << panel;
    EXPECT_LE(seen.high.y, h + 0.5f) << panel;
    EXPECT_GT(seen.high.y - seen.low.y, 15) << panel;
    EXPECT_GT(seen.high.x - seen.low.x, 60) << panel;
  }
  for (int group = 1; group <= 9; ++group) {
    hand.open_group(group);
    EXPECT_NO_THROW(
        hand.see("Decisions/" + std::string(viewer::decision_groups()[static_cast<std::size_t>(group - 1)].title)));
  }
  hand.open_group(6);
  EXPECT_NO_THROW(hand.see("Decisions/inlays[0].material"));
  EXPECT_NO_THROW(hand.see("Stages/Outline cut"));
  EXPECT_NO_THROW(hand.see("Board/picture"));
  if (!hand.sees("Checks")) hand.click("Tabs/Check");
  EXPECT_NO_THROW(hand.see("Checks/figure Length"));
}

TEST(Window, NothingIsOutOfReachWhenSmall) {
  Hand hand;
  hand.resize(800, 600);
  reach_everything(hand);
}
TEST(Window, NothingIsOutOfReachWhenLarge) {
  Hand hand;
  hand.resize(2560, 1440);
  reach_everything(hand);
}
TEST(Window, NothingIsOutOfReachWithTextAtTwoHundredPercent) {
  Hand hand;
  hand.desk().settings.text_size = 2;
  hand.wait();
  reach_everything(hand);
}

TEST(Window, AScreenOfFinePixelsMakesEverythingLarger) {
  ASSERT_TRUE(have_display());
  const std::string property = "xprop -root -f RESOURCE_MANAGER 8s -set RESOURCE_MANAGER ";
  if (std::system((property + "'Xft.dpi: 192'").c_str()) != 0) GTEST_SKIP() << "xprop is not installed";
  {
    Hand hand({"heron-six", 2560, 1500});
    EXPECT_EQ(hand.desk().ui.scale, 2);  // 192 / 96
    const viewer::Seen button = hand.see("Bar/Open");
    EXPECT_GT(button.high.y - button.low.y, 45);  // 15.5 of letters and 10 of margin, twice
    reach_everything(hand);
  }
  EXPECT_EQ(std::system("xprop -root -remove RESOURCE_MANAGER"), 0);
}

TEST(Window, EveryCommandHasItsOwnKey) {
  std::set<std::pair<int, int>> keys;
  for (const viewer::Command& c : viewer::commands()) {
    EXPECT_NE(c.key.key, 0) << c.name;
    EXPECT_TRUE(keys.insert({c.key.key, c.key.mods}).second) << c.name;
    EXPECT_FALSE(viewer::search_commands(viewer::offer(), c.title).empty());
  }
  EXPECT_GT(keys.size(), 40u);
}

TEST(Window, TheCommandListFindsAndRuns) {
  Hand hand;
  hand.press(GLFW_KEY_K, GLFW_MOD_CONTROL);
  hand.frames(4);
  hand.type("across");
  hand.press(GLFW_KEY_ENTER);
  hand.frames(3);
  EXPECT_TRUE(hand.desk().view.cutting);
  EXPECT_EQ(hand.desk().view.dialog, Dialog::none);
}

TEST(Window, TheFirstRunPageIsShownOnce) {
  HandSpec spec{"heron-six"};
  spec.first_run = true;
  Hand hand(spec);
  ASSERT_EQ(hand.desk().view.dialog, Dialog::way);
  hand.click("The way through/Start with this one");
  hand.frames(3);
  EXPECT_EQ(hand.desk().view.dialog, Dialog::none);
  EXPECT_TRUE(viewer::load_settings(hand.folder() / "config").settings.way_shown);
}

TEST(Window, DarkIsDarkAndKept) {
  Hand hand;
  const auto light = hand.app().snapshot();
  hand.press(GLFW_KEY_F9);
  hand.wait();
  const auto dark = hand.app().snapshot();
  double a = 0, b = 0;
  for (std::size_t i = 0; i < dark.size(); ++i) a += light[i], b += dark[i];
  EXPECT_LT(b, 0.5 * a);
  EXPECT_TRUE(viewer::load_settings(hand.folder() / "config").settings.dark);
}

TEST(Window, HelpShowsUnitAndRange) {
  Hand hand;
  hand.open_group(3);
  const auto help_of = [&](const std::string& name) {
    const viewer::Seen field = hand.see(name);
    hand.move((field.low.x + field.high.x) / 2, (field.low.y + field.high.y) / 2);
    hand.frames(2);
    hand.until([&] { return hand.sees("Decisions/help"); }, 5);
    return hand.text("Decisions/help");
  };
  const std::string thickness = help_of("Decisions/board.thickness");
  EXPECT_NE(thickness.find("Unit: mm"), std::string::npos);
  EXPECT_NE(thickness.find("5 mm to 7 mm"), std::string::npos);  // what is usual: Practice.cpp
  EXPECT_EQ(thickness.find("1 mm to 60 mm"), std::string::npos) << "what the table allows says nothing to a builder";
  hand.move(700, 300);
  hand.frames(3);
  // Nothing is usual for the wood behind the nut: there the table's range stands.
  EXPECT_NE(help_of("Decisions/board.behind_nut").find("0.1 mm to 150 mm"), std::string::npos);
}

TEST(Window, ARangeWithoutAnEndNamesNone) {
  const viewer::Manner mm;
  EXPECT_EQ(viewer::shown_range(*find_field("surface.radius_at_nut"), mm).find("100000000"), std::string::npos);
  EXPECT_NE(viewer::shown_range(*find_field("board.thickness"), mm).find("60"), std::string::npos);
}

TEST(Window, NoErrorsInADebugContext) {
  Hand hand;
  for (const int key : {GLFW_KEY_X, GLFW_KEY_H, GLFW_KEY_N, GLFW_KEY_T, GLFW_KEY_2, GLFW_KEY_P}) hand.press(key);
  hand.wait();
  hand.click("Stages/Slots cut");
  hand.wait();
  EXPECT_EQ(viewer::gl::errors(), 0) << viewer::gl::latest_error();
}

}  // namespace
}  // namespace sagitta::test
