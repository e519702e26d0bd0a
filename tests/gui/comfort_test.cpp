/// Keyboard and comfort: Tab reaches everything in the order in which it is seen, and colours are told apart.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "gui/Change.hpp"
#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

using viewer::Dialog;
using viewer::Theme;

/// Relative luminance and contrast as WCAG 2.2 defines them (w3.org/TR/WCAG22, "relative luminance", "contrast ratio").
double luminance(ImU32 colour) {
  double sum = 0;
  const double weights[] = {0.2126, 0.7152, 0.0722};
  for (int i = 0; i < 3; ++i) {
    const double c = static_cast<double>(colour >> (8 * i) & 255) / 255;
    sum += weights[i] * (c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4));
  }
  return sum;
}
double contrast(ImU32 a, ImU32 b) {
  const double l = luminance(a), m = luminance(b);
  return (std::max(l, m) + 0.05) / (std::min(l, m) + 0.05);
}

TEST(Comfort, LettersAndRimsAreSeenAgainstEveryGround) {
  EXPECT_NEAR(contrast(IM_COL32(255, 255, 255, 255), IM_COL32(0, 0, 0, 255)), 21, 1e-9);  // WCAG's own example
  for (const Theme& t : {viewer::light_theme(), viewer::dark_theme()}) {
    for (const ImU32 ground : {t.panel, t.paper, t.field}) {
      EXPECT_GE(contrast(t.text, ground), 7) << t.dark;
      EXPECT_GE(contrast(t.quiet, ground), 4.5) << t.dark;
      EXPECT_GE(contrast(t.accent, ground), 4.5) << t.dark;
      EXPECT_GE(contrast(t.look, ground), 4.5) << t.dark;
      EXPECT_GE(contrast(t.rim, ground), 3) << t.dark;
    }
    EXPECT_GE(contrast(t.accent, t.canvas), 3) << t.dark;  // the keyboard's frame
    EXPECT_GE(contrast(t.text, t.accent_soft), 4.5) << t.dark;
    // Stop and look, which differ in shape too: apart in red and in blue, so that no common colour blindness joins
    // them.
    for (const int shift : {0, 16})
      EXPECT_GE(std::abs(static_cast<int>(t.accent >> shift & 255) - static_cast<int>(t.look >> shift & 255)), 90);
    const ImU32 on_accent = t.dark ? IM_COL32(24, 20, 16, 255) : IM_COL32_WHITE;
    EXPECT_GE(contrast(on_accent, t.accent), 4.5) << t.dark;
  }
}

/// The colour of a pixel of the window.
ImU32 pixel(Hand& hand, float x, float y) {
  const auto& rows = hand.app().snapshot();
  const std::size_t at =
      3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(hand.app().width()) + static_cast<std::size_t>(x));
  return IM_COL32(rows[at], rows[at + 1], rows[at + 2], 255);
}

/// The strongest contrast to the ground beside it along a line across the left side of a widget.
double rim_contrast(Hand& hand, const viewer::Seen& of) {
  const float y = std::floor((of.low.y + of.high.y) / 2);
  const ImU32 ground = pixel(hand, of.low.x - 4, y);
  double most = 0;
  for (float x = of.low.x - 2; x <= of.low.x + 2; ++x) most = std::max(most, contrast(pixel(hand, x, y), ground));
  return most;
}

TEST(Comfort, FieldsAndTickBoxesHaveARimOnScreen) {
  for (const bool dark : {false, true}) {
    Hand hand;
    hand.desk().settings.dark = dark;
    hand.open_group(3);
    hand.wait();
    for (const char* name : {"Decisions/board.thickness", "Decisions/board.heel", "Decisions/Tongue"})
      EXPECT_GE(rim_contrast(hand, hand.see(name)), 3) << name << dark;
    hand.press(GLFW_KEY_E, GLFW_MOD_CONTROL);
    hand.wait();
    EXPECT_GE(rim_contrast(hand, hand.see("Export/folder")), 3) << dark;
  }
}

/// The name of the widget that has the keyboard.
std::string focused(Hand& hand) { return hand.desk().ui.focused(); }

/// Names in the order in which Tab reaches them, until it comes round.
std::vector<std::string> round_trip(Hand& hand, int most) {
  std::vector<std::string> names;
  for (int i = 0; i < most; ++i) {
    hand.press(GLFW_KEY_TAB);
    hand.frames(4);
    const std::string name = focused(hand);
    if (!names.empty() && name == names.front()) break;
    names.push_back(name);
  }
  return names;
}

TEST(Comfort, TabReachesEveryWidgetOfTheWindowInTheOrderOfTheEye) {
  Hand hand;
  hand.open_group(4);
  hand.wait();
  const std::vector<std::string> names = round_trip(hand, 120);
  const std::set<std::string> reached(names.begin(), names.end());
  EXPECT_EQ(reached.size(), names.size()) << "none twice";
  for (const char* name :
       {"Bar/Open", "Bar/Commands", "Decisions/Surface", "Decisions/surface.profile", "Decisions/surface.radius_at_nut",
        "Decisions/Neck", "Board/Fit", "Board/picture", "Stages/It is cut", "Stages/Slots cut"})
    EXPECT_TRUE(reached.contains(name)) << name;
  EXPECT_TRUE(std::any_of(names.begin(), names.end(), [](const std::string& n) { return n.starts_with("Checks/"); }));
  // Inside a panel the order is from top to bottom, and within a row from left to right.
  for (std::size_t i = 1; i < names.size(); ++i) {
    const viewer::Seen *a = hand.desk().ui.find(names[i - 1]), *b = hand.desk().ui.find(names[i]);
    if (!a || !b || names[i].substr(0, 9) != "Decisions" || names[i - 1].substr(0, 9) != "Decisions") continue;
    EXPECT_TRUE(b->low.y > a->low.y + 1 || b->low.x > a->low.x) << names[i - 1] << " before " << names[i];
  }
  hand.press(GLFW_KEY_TAB, GLFW_MOD_SHIFT);
  hand.frames(4);
  EXPECT_EQ(focused(hand), names.back());
}

TEST(Comfort, TabStaysInsideADialogAndEnterPresses) {
  Hand hand;
  hand.press(GLFW_KEY_COMMA, GLFW_MOD_CONTROL);
  hand.frames(4);
  ASSERT_EQ(hand.desk().view.dialog, Dialog::comfort);
  for (const std::string& name : round_trip(hand, 30))
    EXPECT_EQ(name.substr(0, name.find('/')), "Text, colours and units") << name;
  for (int i = 0; i < 12 && focused(hand) != "Text, colours and units/Done"; ++i) {
    hand.press(GLFW_KEY_TAB);
    hand.frames(4);
  }
  ASSERT_EQ(focused(hand), "Text, colours and units/Done");
  hand.press(GLFW_KEY_ENTER);
  hand.frames(4);
  EXPECT_EQ(hand.desk().view.dialog, Dialog::none);
}

TEST(Comfort, AListIsOpenedAndChosenFromByKeysAlone) {
  Hand hand;
  hand.open_group(5);
  hand.desk().ui.focus_on("Decisions/slots.floor");
  hand.frames(4);
  ASSERT_EQ(focused(hand), "Decisions/slots.floor");
  hand.press(GLFW_KEY_ENTER);
  hand.frames(4);
  ASSERT_TRUE(hand.sees("Decisions/slots.floor/level"));
  for (int i = 0; i < 4 && focused(hand) != "Decisions/slots.floor/level"; ++i) {
    hand.press(GLFW_KEY_DOWN);
    hand.frames(4);
  }
  hand.press(GLFW_KEY_ENTER);
  hand.frames(4);
  EXPECT_EQ(hand.board().slots.floor, SlotFloor::level);
}

/// The frame about what has the keyboard, as drawn: it is not there without.
TEST(Comfort, WhatHasTheKeyboardIsSeen) {
  Hand hand;
  hand.wait();
  const auto before = hand.app().snapshot();
  hand.desk().ui.focus_on("Bar/Save");
  hand.frames(4);
  hand.wait();
  const viewer::Seen button = hand.see("Bar/Save");
  const auto& after = hand.app().snapshot();
  double most = 0;
  for (float x = button.low.x - 4; x < button.high.x + 4; ++x)
    for (float y = button.low.y - 4; y < button.high.y + 4; ++y) {
      const std::size_t at = 3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(hand.app().width()) +
                                  static_cast<std::size_t>(x));
      if (after[at] == before[at] && after[at + 1] == before[at + 1]) continue;
      most = std::max(most, contrast(IM_COL32(after[at], after[at + 1], after[at + 2], 255),
                                     IM_COL32(before[at], before[at + 1], before[at + 2], 255)));
    }
  EXPECT_GE(most, 3);
}

}  // namespace
}  // namespace sagitta::test
