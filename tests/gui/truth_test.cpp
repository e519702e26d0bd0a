/// One truth on screen: what is of a board before fades and says why; what failed stays until it is read.

#include <gtest/gtest.h>

#include <chrono>

#include "app/Lag.hpp"
#include "gui/Change.hpp"
#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;

double now() {
  using namespace std::chrono;
  return duration<double>(steady_clock::now().time_since_epoch()).count();
}

/// Mean distance of the window's pixels in a rectangle from their own mean: what a veil takes away.
double contrast(Hand& hand, const viewer::Seen& of) {
  const auto& rows = hand.app().snapshot();
  const int width = hand.app().width();
  double sum = 0, count = 0, off = 0;
  const auto each = [&](const auto& take) {
    for (int y = static_cast<int>(of.low.y) + 2; y < static_cast<int>(of.high.y) - 2; ++y)
      for (int x = static_cast<int>(of.low.x) + 2; x < static_cast<int>(of.high.x) - 2; ++x)
        take(static_cast<double>(rows[static_cast<std::size_t>(3 * (y * width + x) + 1)]));
  };
  each([&](double v) { sum += v, ++count; });
  each([&](double v) { off += std::abs(v - sum / count); });
  return off / count;
}

// A blank of 200 mm holds no board of 483: the picture is of the board before, and says so.
TEST(Truth, APictureOfABoardBeforeFadesAndSaysWhy) {
  Hand hand;
  hand.open_group(7);
  hand.wait();
  EXPECT_FALSE(hand.sees("Board/behind"));
  const viewer::Seen strip = hand.see("Stages/Blank");
  const double before = contrast(hand, strip);
  Board draft = hand.board();
  draft.blank.length = 200;
  hand.desk().document.change(draft, "Test");
  const double start = now();
  while (!hand.sees("Board/behind") && now() - start < 5) hand.rest_and_frame(1);
  std::printf("faded after %.0f ms\n", 1000 * (now() - start));
  ASSERT_TRUE(hand.sees("Board/behind"));
  hand.wait();
  EXPECT_NE(hand.desk().results.good->board, hand.board());
  EXPECT_FALSE(hand.desk().results.behind.stopped);
  EXPECT_LT(contrast(hand, strip), 0.7 * before);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  hand.wait();
  EXPECT_FALSE(hand.sees("Board/behind"));
  EXPECT_NEAR(contrast(hand, strip), before, 0.05 * before);
}

// The clock is the test's own: 100 ms after a change without a new picture it is shown as behind, and the window's
// sleep ends in time for that.
TEST(Truth, WhatIsBehindIsShownSoWithinATenthOfASecond) {
  Hand hand;
  viewer::Lag lag;
  viewer::Document document;
  const viewer::View view;
  document.adopt(hand.board(), "", "");
  const viewer::Results& results = hand.desk().results;
  EXPECT_FALSE(lag.judged(document, view, results, true, 7).picture);
  EXPECT_FALSE(lag.due(7));
  Board draft = hand.board();
  draft.board.thickness += 0.1;
  document.preview(draft);
  EXPECT_FALSE(lag.judged(document, view, results, false, 8).picture);
  ASSERT_TRUE(lag.due(8));
  EXPECT_LT(*lag.due(8), 0.1);
  EXPECT_TRUE(lag.judged(document, view, results, false, 8 + *lag.due(8)).picture);
  EXPECT_FALSE(lag.judged(document, view, results, false, 8.1).stopped);
  EXPECT_TRUE(lag.judged(document, view, results, true, 8.2).stopped);
  document.abandon();
  EXPECT_FALSE(lag.judged(document, view, results, true, 8.3).picture);
}

TEST(Truth, AHandThatDragsIsFollowedWithoutFading) {
  Hand hand;
  hand.open_group(4);
  hand.drag("Decisions/surface.radius_at_nut", 20, 0, false);
  int behind = 0;
  const viewer::Seen field = hand.see("Decisions/surface.radius_at_nut");
  for (int i = 1; i <= 30; ++i) {
    hand.move((field.low.x + field.high.x) / 2 + 20 + static_cast<float>(i), (field.low.y + field.high.y) / 2);
    hand.until([&] { return hand.desk().results.good->board == hand.board(); }, 20);
    behind += hand.desk().results.behind.picture;
  }
  hand.release();
  EXPECT_LE(behind, 3);  // a busy machine may be late now and then
}

TEST(Truth, WorkThatWasStoppedIsTakenUpByItsButton) {
  Hand hand({"wave-border"});  // its drawing takes longest to fit
  const Inlay first = hand.board().inlays[0];
  for (int i = 1; i < 12 && !hand.desk().results.behind.stopped; ++i) {
    Board draft = hand.board();
    Inlay& inlay = draft.inlays[0];
    (first.along ? inlay.along : inlay.across) = first.along.value_or(first.across.value_or(40)) * (1 - 0.01 * i);
    hand.desk().document.change(draft, "Test");
    hand.until([&] { return hand.desk().results.working.what.starts_with("Fitting"); }, 5);
    hand.desk().ask("cancel");
    hand.frames(1);
    for (int k = 0; k < 100 && !hand.app().settled(); ++k) hand.rest_and_frame(0.01);
    hand.rest_and_frame(0.08);  // longer than the new picture is waited for before the old one fades
  }
  ASSERT_TRUE(hand.desk().results.behind.stopped);
  hand.frames(3);
  hand.click("Board/Go on");
  hand.wait();
  EXPECT_FALSE(hand.desk().results.behind.picture);
  EXPECT_EQ(hand.desk().results.good->board, hand.board());
}

TEST(Truth, AFailureStaysUntilItIsReadAndOffersAWay) {
  Hand hand;
  change(hand, [](Board& b) { b.board.thickness = 6.1; });
  // A folder stands where the file should be written: nothing can be put in its place.
  fs::remove(hand.file());
  fs::create_directory(hand.file());
  hand.press(GLFW_KEY_S, GLFW_MOD_CONTROL);
  hand.frames(3);
  ASSERT_TRUE(hand.desk().view.failure);
  hand.press(GLFW_KEY_U);  // what is said next does not take it away
  hand.wait();
  EXPECT_TRUE(hand.see("Board/failure").in_view);
  EXPECT_TRUE(hand.desk().document.dirty());
  hand.click("Board/Save under another name");
  hand.frames(3);
  EXPECT_EQ(hand.desk().view.dialog, viewer::Dialog::save_as);
  EXPECT_FALSE(hand.desk().view.failure);
}

}  // namespace
}  // namespace sagitta::test
