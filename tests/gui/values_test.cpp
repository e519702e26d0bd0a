/// Values typed and dragged, undone and shown: asserted on the document.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "board/Practice.hpp"
#include "gui/Hand.hpp"
#include "scene/Slice.hpp"

namespace sagitta::test {
namespace {

/// Metres of "25 1/2 in" and its like: the inch is 25.4 mm exactly (international yard and pound agreement, 1959).
constexpr double inch = 25.4;

TEST(Values, AnInchFractionIsTaken) {
  Hand hand;
  hand.open_group(1);
  hand.enter("Decisions/scale.length", "25 1/2 in");
  EXPECT_DOUBLE_EQ(*hand.board().scale.length, 25.5 * inch);
  EXPECT_EQ(hand.desk().document.steps(), 1u);
}

TEST(Values, ArithmeticIsTaken) {
  Hand hand;
  hand.open_group(1);
  hand.enter("Decisions/scale.length", "1300/2 - 1-11/16 in");
  EXPECT_NEAR(*hand.board().scale.length, 650 - 1.6875 * inch, 1e-12);
}

TEST(Values, ADecimalCommaIsTakenAsAPointIs) {
  Hand hand;
  hand.open_group(1);
  hand.enter("Decisions/scale.length", "647,7");
  EXPECT_DOUBLE_EQ(*hand.board().scale.length, 647.7);
  hand.enter("Decisions/scale.length", "25,5 in");
  EXPECT_DOUBLE_EQ(*hand.board().scale.length, 647.7);  // 25.5 x 25.4
  hand.open_group(2);
  hand.enter("Decisions/strings.gauges", "1,17; 0,91; 0,66; 0,43; 0,33; 0,25");
  EXPECT_EQ(hand.board().strings.gauges, (std::vector<double>{1.17, 0.91, 0.66, 0.43, 0.33, 0.25}));
  hand.open_group(6);
  hand.enter("Decisions/inlays[0].frets", "5,7");  // between whole numbers a comma parts, as it always did
  EXPECT_EQ(hand.board().inlays[0].frets, (std::vector<int>{5, 7}));
}

TEST(Values, LengthsAreShownWithAComma) {
  Hand hand;
  hand.desk().settings.decimal = viewer::Decimal::comma;
  hand.open_group(1);
  hand.enter("Decisions/scale.length", "647.7");
  EXPECT_EQ(hand.text("Decisions/scale.length"), "647,7 mm");
  hand.click("Decisions/scale.length");  // typed over as it stands
  hand.frames(2);
  hand.press(GLFW_KEY_END), hand.type(" "), hand.press(GLFW_KEY_ENTER);
  EXPECT_DOUBLE_EQ(*hand.board().scale.length, 647.7);
  hand.open_group(2);
  hand.enter("Decisions/strings.gauges", "1.17, 0.91, 0.66, 0.43, 0.33, 0.25");
  EXPECT_EQ(hand.text("Decisions/strings.gauges"), "1,17; 0,91; 0,66; 0,43; 0,33; 0,25");
  EXPECT_EQ(text_of(hand.file()).find("647,7"), std::string::npos);
}

/// Everything that a field shows can be typed as it stands and gives the same value: with a comma too.
TEST(Values, WhatIsShownWithACommaReadsAsTheSame) {
  const viewer::Manner comma{Units::mm, false, true};
  const auto same = [&](const char* key, const Value& value) {
    const Field& field = *find_field(key);
    const std::string text = viewer::shown_value(field, value, comma);
    const auto back = viewer::typed_value(field, text, comma);
    ASSERT_TRUE(std::holds_alternative<Value>(back)) << key << ": " << text;
    EXPECT_EQ(std::get<Value>(back), value) << key << ": " << text;
  };
  same("scale.length", Value(647.7));
  same("strings.gauges", Value(std::vector<double>{1.17, 0.91}));
  same("strings.gauges", Value(std::vector<double>{1.17}));
  same("board.edge_margin", Value(3.25));
  same("board.edge_margin", Value(Place2{3.25, 3.5}));
  same("board.width_at_fret", Value(Place2{12, 52.5}));
  same("blank.at", Value(Place2{31.5, 42.25}));
  same("pins.at", Value(std::vector<Place2>{{31.5, 4.25}, {300.5, -4}}));
  same("inlays.frets", Value(std::vector<int>{3, 5}));
  same("wire.end_bevel", Value(27.5));
}

TEST(Values, NothingJumpsWhileTyping) {
  Hand hand;
  hand.open_group(3);
  const auto below = [&] { return hand.see("Decisions/board.edge_margin").low.y; };
  const float before = below();
  hand.click("Decisions/board.thickness");
  hand.frames(2);
  for (const char* text : {"6", "0", "0", "x"}) {
    hand.type(text);
    EXPECT_FLOAT_EQ(below(), before) << text;
    EXPECT_FALSE(hand.text("Decisions/typed").empty());
  }
  hand.press(GLFW_KEY_ESCAPE);
}

TEST(Values, ATipTellsWhatIsUsualAndWhy) {
  Hand hand;
  hand.open_group(5);
  const viewer::Seen field = hand.see("Decisions/slots.width");
  hand.move((field.low.x + field.high.x) / 2, (field.low.y + field.high.y) / 2);
  hand.until([&] { return hand.sees("Decisions/help"); }, 5);
  const std::string tip = hand.text("Decisions/help");
  const Practice& practice = *practice_of("slots.width");
  EXPECT_THAT(tip, testing::HasSubstr(std::string(practice.reason)));
  EXPECT_THAT(tip, testing::HasSubstr(viewer::shown(practice.least, {})));
  EXPECT_THAT(tip, testing::HasSubstr(viewer::shown(practice.most, {})));
}

TEST(Values, OutOfRangeStaysBesideTheField) {
  Hand hand;
  hand.open_group(3);
  const Board before = hand.board();
  hand.enter("Decisions/board.thickness", "600 mm");
  EXPECT_EQ(hand.board(), before);
  EXPECT_EQ(hand.text("Decisions/board.thickness"), "600 mm");
  EXPECT_NE(hand.desk().forms.rows.refused().at("board.thickness").find("60 mm"),
            std::string::npos);  // the table's most
  EXPECT_EQ(hand.desk().document.steps(), 0u);
}

TEST(Values, NothingIsTakenWhileHalfTyped) {
  Hand hand;
  hand.open_group(3);
  const Board before = hand.board();
  hand.click("Decisions/board.thickness");
  hand.frames(2);
  hand.type("7.");
  EXPECT_EQ(hand.board(), before);
  hand.type("25");
  EXPECT_EQ(hand.board(), before);
  hand.press(GLFW_KEY_ESCAPE);
  EXPECT_EQ(hand.board(), before);
  hand.enter("Decisions/board.thickness", "7.25");
  EXPECT_DOUBLE_EQ(hand.board().board.thickness, 7.25);
}

TEST(Values, NonsenseIsRefusedInWords) {
  Hand hand;
  hand.open_group(3);
  const Board before = hand.board();
  hand.enter("Decisions/board.thickness", "six");
  EXPECT_EQ(hand.board(), before);
  EXPECT_FALSE(hand.desk().forms.rows.refused().at("board.thickness").empty());
}

TEST(Values, OneDragIsOneStepAndTheSectionFollows) {
  Hand hand;
  hand.press(GLFW_KEY_X);
  hand.wait();
  hand.open_group(4);
  const std::string before = hand.text("Board/section Radius");
  const double was = *hand.board().surface.radius_at_nut;
  hand.drag("Decisions/surface.radius_at_nut", 90);
  hand.wait();
  const double is = *hand.board().surface.radius_at_nut;
  EXPECT_GT(is, was + 20);
  EXPECT_EQ(hand.desk().document.steps(), 1u);
  EXPECT_NE(hand.text("Board/section Radius"), before);
  // The figure is the surface's own law: R linear in x from the nut to the heel end.
  const Layout& layout = hand.desk().results.good->prepared->layout();
  const double x = hand.desk().view.cut, heel = *hand.board().surface.radius_at_heel;
  EXPECT_EQ(hand.text("Board/section Radius"),
            viewer::shown(is + (heel - is) * x / layout.heel_end, hand.desk().manner(), 2));
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_DOUBLE_EQ(*hand.board().surface.radius_at_nut, was);
}

TEST(Values, WhileDraggingTheModelFollows) {
  Hand hand;
  hand.open_group(4);
  hand.drag("Decisions/surface.radius_at_nut", 120, 0, false);
  hand.until([&] { return hand.desk().results.good->board == hand.board(); }, 20);
  EXPECT_TRUE(hand.desk().document.previewing());
  EXPECT_EQ(hand.desk().document.steps(), 0u);
  hand.release();
  EXPECT_EQ(hand.desk().document.steps(), 1u);
}

TEST(Values, UndoGoesToTheBeginningAndBack) {
  Hand hand;
  const Board first = hand.board();
  hand.open_group(1);
  hand.enter("Decisions/scale.length", "640");
  hand.enter("Decisions/scale.frets", "20");
  hand.open_group(3);
  hand.enter("Decisions/board.thickness", "6.5");
  const Board last = hand.board();
  ASSERT_EQ(hand.desk().document.steps(), 3u);
  for (int i = 0; i < 5; ++i) hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_EQ(hand.board(), first);
  EXPECT_FALSE(hand.desk().document.dirty());
  for (int i = 0; i < 5; ++i) hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  EXPECT_EQ(hand.board(), last);
}

TEST(Values, LengthsAreShownInTheUnitOfChoice) {
  Hand hand({"heron-six"});
  hand.open_group(1);
  hand.enter("Decisions/scale.length", "25 1/2 in");
  EXPECT_EQ(hand.text("Decisions/scale.length"), "647.7 mm");
  hand.press(GLFW_KEY_U), hand.press(GLFW_KEY_U);
  EXPECT_EQ(hand.text("Decisions/scale.length"), "25.5 in");
  hand.press(GLFW_KEY_U);
  EXPECT_EQ(hand.text("Decisions/scale.length"), "25 1/2 in");
  EXPECT_EQ(hand.board().units, Units::mm);
}

TEST(Values, AListAndAChoiceAndATick) {
  Hand hand;
  hand.open_group(6);
  hand.enter("Decisions/inlays[0].frets", "5, 7");
  EXPECT_EQ(hand.board().inlays[0].frets, (std::vector<int>{5, 7}));
  hand.open_group(5);
  hand.choose("Decisions/slots.floor", "level");
  EXPECT_EQ(hand.board().slots.floor, SlotFloor::level);
  hand.open_group(1);
  hand.click("Decisions/scale.zero_fret");
  EXPECT_TRUE(hand.board().scale.zero_fret);
}

TEST(Values, OneScaleBecomesAFan) {
  Hand hand;
  hand.open_group(1);
  hand.choose("Decisions/form.scale", "fan, two lengths");
  ASSERT_TRUE(hand.board().scale.bass && hand.board().scale.treble);
  hand.enter("Decisions/scale.bass", "660");
  hand.wait();
  EXPECT_DOUBLE_EQ(*hand.board().scale.bass, 660);
  EXPECT_DOUBLE_EQ(hand.desk().results.good->prepared->layout().bass_scale, 660);
}

TEST(Values, TheKeyboardAloneChangesAValue) {
  Hand hand;
  hand.open_group(3);
  hand.desk().ui.lead_to("Decisions/board.thickness");
  hand.frames(4);
  hand.type("6.1");
  hand.press(GLFW_KEY_TAB);
  EXPECT_DOUBLE_EQ(hand.board().board.thickness, 6.1);
}

}  // namespace
}  // namespace sagitta::test
