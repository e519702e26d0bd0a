/// The card of the next cut, and the page of the ways out of what was measured.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "gui/Change.hpp"
#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

const Release& release(Hand& hand) { return *hand.desk().results.model->release; }

bool has_stop(Hand& hand) {
  const auto& all = hand.desk().results.good->findings;
  return std::any_of(all.begin(), all.end(), [](const Finding& f) { return f.severity == Severity::stop; });
}

TEST(NextCut, IsReleasedAndGoesOnWhenItIsCut) {
  Hand hand;
  ASSERT_TRUE(hand.sees("Stages/next cut"));
  EXPECT_EQ(release(hand).answer, Release::Answer::as_planned);
  EXPECT_EQ(release(hand).operation, Operation::pockets);
  hand.click("Stages/It is cut");
  hand.wait();
  EXPECT_EQ(hand.board().measured.done, std::vector<Operation>{Operation::pockets});
  EXPECT_EQ(release(hand).operation, Operation::radius);  // gluing in the pieces is no cut
  EXPECT_EQ(release(hand).answer, Release::Answer::as_planned);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_TRUE(hand.board().measured.done.empty());
}

// The blank is 0.3 mm thicker than planned: the heights that the pockets are cut from change.
TEST(NextCut, NamesTheNumbersThatChanged) {
  Hand hand;
  change(hand, [](Board& b) { b.measured.blank_thickness = *b.blank.thickness + 0.3; });
  EXPECT_EQ(release(hand).answer, Release::Answer::changed);
  ASSERT_FALSE(release(hand).changes.empty());
  EXPECT_TRUE(std::any_of(release(hand).changes.begin(), release(hand).changes.end(), [](const ChangedNumber& each) {
    return each.planned && each.measured && std::abs(*each.measured - *each.planned - 0.3) < 1e-9;
  }));
  EXPECT_NE(hand.text("Stages/next cut says").find(release(hand).changes.front().what), std::string::npos);
  EXPECT_TRUE(hand.sees("Stages/It is cut"));
}

// Slots 1.2 mm deep for a tang of 1.7 mm.
TEST(NextCut, IsStoppedWithItsReason) {
  Hand hand;
  change(hand, [](Board& b) { b.slots.depth = 1.2; });
  EXPECT_EQ(release(hand).answer, Release::Answer::refused);
  EXPECT_FALSE(release(hand).stops.empty());
  EXPECT_FALSE(hand.text("Stages/next cut says").empty());
  EXPECT_FALSE(hand.sees("Stages/It is cut"));
}

// Slots cut by a scale 1.2 mm longer than the board's: the saddle moves by as much.
TEST(Rescue, SlotsOfAnotherScaleAreTakenOverByOneButton) {
  constexpr double longer = 1.2;
  Hand hand;
  change(hand, [&](Board& b) {
    for (int fret = 1; fret <= b.scale.frets; ++fret)
      b.measured.slots.push_back((*b.scale.length + longer) * (1 - std::exp2(-fret / 12.0)));
    b.measured.done = {Operation::pockets, Operation::inlay, Operation::radius, Operation::slots};
  });
  const Board before = hand.board();
  ASSERT_TRUE(has_stop(hand));
  EXPECT_EQ(release(hand).answer, Release::Answer::refused);
  EXPECT_EQ(release(hand).operation, Operation::outline);
  hand.click("Stages/Ways out");
  hand.wait();
  const std::string page = "Ways out of what was measured/";
  ASSERT_EQ(hand.text(page + "way 1"), "other-scale");
  const std::size_t steps = hand.desk().document.steps();
  hand.click(page + "Take way 1");
  hand.wait();
  EXPECT_EQ(hand.desk().document.steps(), steps + 1);
  EXPECT_NEAR(*hand.board().scale.length, *before.scale.length + longer, 1e-6);
  EXPECT_FALSE(has_stop(hand));
  EXPECT_NE(release(hand).answer, Release::Answer::refused);
  hand.click(page + "Done");
  hand.frames(2);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_EQ(hand.board(), before);
}

}  // namespace
}  // namespace sagitta::test
