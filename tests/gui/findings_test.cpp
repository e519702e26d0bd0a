/// What would go wrong, in the window: the list, the way to the place, what is drawn over the board.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "decisions/FindingMarks.hpp"
#include "gui/Change.hpp"
#include "gui/Hand.hpp"
#include "gui/NeckStep.hpp"

namespace sagitta::test {
namespace {

/// Findings that say stop or look.
int to_look_at(Hand& hand) {
  const auto& all = hand.desk().results.good->findings;
  return static_cast<int>(
      std::count_if(all.begin(), all.end(), [](const Finding& f) { return f.severity != Severity::note; }));
}

TEST(Findings, ACleanBoardSaysSo) {
  Hand hand;
  EXPECT_EQ(to_look_at(hand), 0);
  EXPECT_FALSE(hand.sees("Checks/finding 1"));
  // What is only worth knowing is folded away, and opens.
  hand.click("Checks/notes");
  EXPECT_FALSE(hand.text("Checks/finding 1").empty());
}

TEST(Findings, TheListFollowsEachChangeAndIsSortedByCost) {
  Hand hand;
  hand.open_group(5);
  hand.enter("Decisions/slots.depth", "1.2");  // tang 1.7 mm: the fret cannot sit down
  hand.enter("Decisions/slots.width", "0.5");
  hand.wait();
  EXPECT_NE(hand.text("Checks/finding 1").find("Slot too shallow"), std::string::npos);
  EXPECT_NE(hand.text("Checks/finding 2").find("Slot too tight"), std::string::npos);
  hand.enter("Decisions/slots.depth", "2");
  hand.wait();
  EXPECT_NE(hand.text("Checks/finding 1").find("Slot too tight"), std::string::npos);
  EXPECT_FALSE(hand.sees("Checks/finding 2"));
}

TEST(Findings, AClickFliesToThePlaceMarksItAndShowsTheValue) {
  Hand hand;
  change(hand, [](Board& b) { b.slots.depth = 1.2; });
  const auto before = hand.picture();
  hand.click("Checks/finding 1");
  hand.wait();
  const Finding& finding = hand.desk().results.good->findings.front();
  const viewer::Vec target = hand.desk().view.camera.target;
  EXPECT_NEAR(target.x, finding.at[0], 1e-3);  // 32-bit floats
  EXPECT_NEAR(target.y, finding.at[1], 1e-3);
  EXPECT_GT(Hand::changed(before, hand.picture()), 0.2);
  // 1.2 mm of slot less 1.7 mm of tang
  EXPECT_EQ(hand.text("Board/marked finding"), "-0.5 mm");
  const viewer::Seen picture = hand.see("Board/picture"), mark = hand.see("Board/marked finding");
  EXPECT_NEAR(mark.low.x, (picture.low.x + picture.high.x) / 2, 2);
  EXPECT_NEAR(mark.low.y, (picture.low.y + picture.high.y) / 2, 2);
  hand.click("Checks/Open its decision");
  hand.wait();
  EXPECT_EQ(hand.desk().view.decision, 4);
  EXPECT_TRUE(hand.see("Decisions/slots.depth").in_view);
  hand.press(GLFW_KEY_ESCAPE), hand.press(GLFW_KEY_ESCAPE);
  EXPECT_FALSE(hand.sees("Board/marked finding"));
}

TEST(Findings, AButtonAppliesTheRemedyAsOneStep) {
  Hand hand;
  change(hand, [](Board& b) { b.slots.depth = 1.2; });
  const Board before = hand.board();
  hand.click("Checks/finding 1");
  hand.wait();
  const std::size_t steps = hand.desk().document.steps();
  const std::string words = hand.text("Checks/apply");
  EXPECT_EQ(words.substr(0, 18), "Set slot depth to ");
  hand.click("Checks/apply");
  hand.wait();
  EXPECT_EQ(hand.desk().document.steps(), steps + 1);
  EXPECT_EQ(to_look_at(hand), 0);
  EXPECT_GE(*hand.board().slots.depth, 1.7);  // at least the tang
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  EXPECT_EQ(hand.board(), before);
}

/// The newest board again, with every word for people taken out of its findings and its solids.
void mute(Hand& hand) {
  auto mute = std::make_shared<viewer::Model>(*hand.desk().results.good);
  for (Finding& finding : mute->findings)
    finding.feature = finding.message = finding.cost = finding.source = finding.suggestion = "";
  for (auto& stage : mute->stages) {
    if (!stage) continue;
    auto wordless = std::make_shared<viewer::StageModel>(*stage);
    auto shell = std::make_shared<Shell>(*wordless->shell);
    for (PlanFeature& feature : shell->plan.features) feature.name = "";
    wordless->shell = std::move(shell);
    stage = wordless;
  }
  hand.desk().results.model = hand.desk().results.good = mute;
}

TEST(Findings, AreReachedAndRemediedWithoutAWord) {
  Hand hand;
  change(hand, [](Board& b) { b.slots.depth = 1.2; });
  mute(hand);
  hand.click("Checks/finding 1");
  hand.wait();
  ASSERT_TRUE(viewer::marked_finding(hand.desk().view, hand.desk().results));
  EXPECT_NEAR(hand.desk().view.camera.target.x, hand.desk().results.good->findings.front().at[0], 1e-3);
  hand.click("Checks/Open its decision");
  hand.wait();
  EXPECT_EQ(hand.desk().view.decision, 4);
  hand.click("Checks/apply");
  hand.wait();
  EXPECT_EQ(to_look_at(hand), 0);
}

TEST(Findings, ANoteSaysThatOneWasSeenAndWhy) {
  Hand hand;
  change(hand, [](Board& b) { b.slots.depth = 1.2; });
  const std::string name = hand.desk().results.good->findings.front().name;
  hand.click("Checks/finding 1");
  hand.wait();
  hand.click("Checks/Note that it was seen");
  hand.frames(4);
  ASSERT_TRUE(hand.desk().forms.rows.typing()) << "what is to be said is typed at once";
  hand.press(GLFW_KEY_A, GLFW_MOD_CONTROL);
  hand.type("deepened at the bench");
  hand.press(GLFW_KEY_ENTER);
  hand.wait();
  ASSERT_EQ(hand.board().notes.size(), 1u);
  EXPECT_EQ(hand.board().notes[0], (Note{"deepened at the bench", name, ""}));
  EXPECT_TRUE(hand.sees("Checks/Change its note"));
  hand.click("Checks/Change its note");
  hand.frames(4);
  EXPECT_EQ(hand.board().notes.size(), 1u) << "one note a finding";
}

TEST(Findings, AKeyStepsThroughThem) {
  Hand hand;
  change(hand, [](Board& b) { b.slots.depth = 1.2, b.slots.width = 0.5; });
  ASSERT_EQ(to_look_at(hand), 2);
  const std::pair<int, const char*> steps[] = {{0, "slot-too-shallow"}, {0, "slot-too-tight"}, {1, "slot-too-shallow"}};
  for (const auto& [back, name] : steps) {
    hand.press(GLFW_KEY_F8, back ? GLFW_MOD_SHIFT : 0);
    hand.wait();
    ASSERT_TRUE(viewer::marked_finding(hand.desk().view, hand.desk().results));
    EXPECT_EQ(viewer::marked_finding(hand.desk().view, hand.desk().results)->name, name);
  }
}

TEST(Findings, ABlanksFindingShowsTheBlank) {
  Hand hand;
  change(hand, [](Board& b) { b.blank.length = 491; });
  hand.press(GLFW_KEY_F8);
  hand.wait();
  ASSERT_TRUE(viewer::marked_finding(hand.desk().view, hand.desk().results));
  ASSERT_EQ(viewer::marked_finding(hand.desk().view, hand.desk().results)->name, "blank-short");
  EXPECT_EQ(hand.desk().view.stage, Stage::blank);
  EXPECT_EQ(viewer::key_of_finding(*viewer::marked_finding(hand.desk().view, hand.desk().results), hand.board()),
            "blank.length");
}

TEST(Findings, EveryFindingLeadsToADecision) {
  const Board board;
  for (const char* name : {"octave-off", "board-narrower-than-neck", "inlay-too-thin", "thin-edge", "slot-misplaced"}) {
    Finding finding;
    finding.name = name, finding.where = {FeatureId::Kind::inlay, 0, 3};
    EXPECT_NE(viewer::key_of_finding(finding, board), "") << name;
  }
  Finding third;
  third.name = "thin-wall-at-slot", third.where = {FeatureId::Kind::inlay, 2, 7};
  EXPECT_EQ(viewer::key_of_finding(third, board), "inlays[2].frets");
}

TEST(Findings, TheNeckIsShadedWhereItStandsOut) {
  Hand hand;
  // Heron-six is 42.5 mm wide at the nut: a neck of 43 stands out 0.25 mm on each side there.
  const double heel = 2 * hand.desk().results.good->prepared->layout().half_width(460);
  change(hand, [&](Board& b) {
    b.neck = Neck();
    b.neck->nut_width = 43, b.neck->body_width = heel - 0.4, b.neck->body_at = 460;
  });
  const auto before = hand.app().snapshot();
  hand.press(GLFW_KEY_K);
  hand.wait();
  EXPECT_EQ(hand.text("Board/neck fit narrowest"), "neck over by 0.25 mm");
  EXPECT_EQ(hand.text("Board/neck fit widest"), "board over by 0.2 mm");
  EXPECT_GT(Hand::changed(before, hand.app().snapshot()), 0.002);
  EXPECT_NE(hand.text("Checks/finding 1").find("Board narrower than neck"), std::string::npos);
}

TEST(Findings, TheNecksFileIsReadAndShaded) {
  Hand hand;
  // A neck that stands out by 0.75 on the bass side all along, and on the treble side nowhere.
  const Layout layout = hand.desk().results.good->prepared->layout();
  write_neck(hand.folder() / "neck.step", layout, 0.75, 0);
  change(hand, [&](Board& b) { b.neck = Neck(), b.neck->file = "neck.step"; });
  ASSERT_TRUE(hand.desk().results.good->neck && hand.desk().results.good->neck->shape);
  hand.press(GLFW_KEY_K);
  hand.wait();
  EXPECT_EQ(hand.text("Board/neck fit narrowest"), "neck over by 0.75 mm");
  EXPECT_NE(hand.text("Checks/finding 1").find("Neck outside board"), std::string::npos);
  // The file changes: it is read again with the next change of the board.
  write_neck(hand.folder() / "neck.step", layout, -0.25, -0.25);
  std::filesystem::last_write_time(
      hand.folder() / "neck.step",
      std::filesystem::last_write_time(hand.folder() / "neck.step") + std::chrono::seconds(1));
  change(hand, [](Board& b) { b.board.past_last_fret += 0.5; });
  EXPECT_EQ(hand.text("Board/neck fit narrowest"), "board over by 0.25 mm");
}

// The neck lies in its file as the board does: nut at 0, heel end at the board's. Turned round they change places, and
// Undo finds the neck where it was.
TEST(Findings, TheNeckIsTurnedRoundByItsButton) {
  Hand hand;
  const Layout layout = hand.desk().results.good->prepared->layout();
  write_neck(hand.folder() / "neck.step", layout, 0, 0);
  change(hand, [](Board& b) { b.neck = Neck(), b.neck->file = "neck.step"; });
  const auto place = [&] { return hand.desk().results.good->neck->shape->place; };
  ASSERT_TRUE(hand.desk().results.good->neck && hand.desk().results.good->neck->shape);
  ASSERT_NEAR(place().along[0], 1, 1e-6);
  hand.click("Checks/Turn the neck round");
  hand.wait();
  ASSERT_TRUE(hand.board().neck->file_nut && hand.board().neck->file_heel);
  EXPECT_NEAR((*hand.board().neck->file_nut)[0], layout.heel_end, 1e-3);
  EXPECT_NEAR((*hand.board().neck->file_heel)[0], 0, 1e-3);
  ASSERT_TRUE(hand.desk().results.good->neck && hand.desk().results.good->neck->shape);
  EXPECT_NEAR(place().along[0], -1, 1e-3);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  hand.wait();
  EXPECT_FALSE(hand.board().neck->file_nut);
  EXPECT_NEAR(place().along[0], 1, 1e-6);
}

TEST(Findings, ANecksFileThatIsNoneIsSaid) {
  Hand hand;
  write(hand.folder() / "neck.step", "not a neck");
  change(hand, [&](Board& b) { b.neck = Neck(), b.neck->file = "neck.step"; });
  EXPECT_NE(hand.text("Checks/finding 1").find("Neck file unread"), std::string::npos);
}

TEST(Findings, TheHumpUnderEachStringIsDrawnAndNamed) {
  Hand hand;
  // TRADE, hump table (closed form dy^2/8R): 25.5 in, 22 frets, 35 / 52.4 mm, cylinder of 9.5 in: 0.0205 mm.
  change(hand, [](Board& b) {
    b.scale.length = 25.5 * 25.4, b.scale.frets = 22;
    b.strings.nut_spread = 35, b.strings.saddle_spread = 52.4;
    b.surface = {Profile::single, 9.5 * 25.4, {}, HeelAt::heel, {}, {}};
  });
  hand.press(GLFW_KEY_J);
  hand.wait();
  EXPECT_NEAR(std::stod(hand.text("Board/hump 1")), 0.0205, 0.00006);  // the table's last digit and the label's
  EXPECT_EQ(hand.text("Board/hump 1"), hand.text("Board/hump 6"));
  EXPECT_LT(std::stod(hand.text("Board/hump 3")), 0.003);
  // On a string-line surface every string lies on a ruling: no hump at all.
  change(hand, [](Board& b) { b.surface.profile = Profile::string_line; });
  EXPECT_NEAR(std::stod(hand.text("Board/hump 1")), 0, 0.00006);
}

TEST(Findings, NoWordsOverTheBoardCoverOthers) {
  Hand hand;
  for (const int text : {100, 150})
    for (int group = 1; group <= 9; ++group) {
      hand.desk().settings.text_size = text / 100.0;
      hand.open_group(group);
      hand.desk().view.humps = group % 2 == 0;
      if (group == 2)  // a cylinder: the outer four strings have a hump of more than 0.005 mm, dy^2 / 8R
        change(hand, [](Board& b) { b.surface = {Profile::single, 241.3, {}, HeelAt::heel, {}, {}}; });
      hand.wait();
      std::vector<viewer::Seen> labels;
      for (const auto& [name, seen] : hand.desk().ui.all())
        if (name.starts_with("Board/label ") && seen.frame >= hand.desk().ui.frame() - 1) labels.push_back(seen);
      for (std::size_t i = 0; i < labels.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
          const viewer::Seen &a = labels[i], &b = labels[j];
          const bool apart = a.high.x <= b.low.x || b.high.x <= a.low.x || a.high.y <= b.low.y || b.high.y <= a.low.y;
          EXPECT_TRUE(apart) << "group " << group << ": " << a.text << " over " << b.text;
        }
      if (group == 2) {
        EXPECT_GE(labels.size(), 6u);
      }
    }
}

TEST(FretPage, CentsForATenthAreTheTables) {
  Hand hand;
  change(hand, [](Board& b) { b.scale.length = 650, b.scale.frets = 24; });
  hand.press(GLFW_KEY_L);
  hand.wait();
  // TRADE, cents per 0.1 mm at 650 mm: f1 0.28, f12 0.53, f20 0.85, f24 1.07.
  for (const auto& [fret, cents] : {std::pair(1, "0.28"), {12, "0.53"}, {20, "0.85"}, {24, "1.07"}}) {
    const std::string row = hand.text("Fret by fret/place " + std::to_string(fret));
    EXPECT_EQ(row.substr(row.rfind('|') + 1), cents);
  }
}

TEST(FretPage, WireIsAsLongAsTheArc) {
  Hand hand;
  change(hand, [](Board& b) {
    b.surface = {Profile::single, 184.15, {}, HeelAt::heel, {}, {}};
    b.wire.overhang = 2;
  });
  hand.press(GLFW_KEY_L, GLFW_MOD_SHIFT);
  hand.wait();
  // Arc over a chord w of a circle R: 2 R asin(w / 2R), and 2 mm over each edge.
  const double w = 2 * hand.desk().results.good->prepared->layout().half_width(
                           hand.desk().results.good->prepared->layout().frets[12].middle.x);
  const double wanted = 2 * 184.15 * std::asin(w / (2 * 184.15)) + 4;
  const std::string row = hand.text("Fret by fret/wire 12");
  EXPECT_NEAR(std::stod(row.substr(row.find('|') + 1)), wanted, 0.051);  // shown to 0.1 mm
  EXPECT_NE(row.find("|184 mm"), std::string::npos);
}

TEST(FretPage, MeasuredSlotsAreTypedOneAfterAnother) {
  Hand hand;
  const Layout l = hand.desk().results.good->prepared->layout();
  const auto typed = [&](int fret, double off) {
    return std::to_string(l.frets[static_cast<std::size_t>(fret)].middle.x + off);
  };
  hand.press(GLFW_KEY_L, GLFW_MOD_CONTROL);
  hand.wait();
  EXPECT_FALSE(hand.see("Fret by fret/measured 2").enabled);
  hand.click("Fret by fret/measured 1");
  hand.type(typed(1, 0.01)), hand.press(GLFW_KEY_ENTER);
  hand.type(typed(2, 0.02)), hand.press(GLFW_KEY_ENTER);
  hand.type(typed(3, -0.25)), hand.press(GLFW_KEY_ENTER);
  hand.wait();
  ASSERT_EQ(hand.board().measured.slots.size(), 3u);
  EXPECT_EQ(hand.desk().document.steps(), 3u);
  EXPECT_EQ(hand.text("Fret by fret/off 3").substr(0, 5), "-0.25");
  hand.type("about here"), hand.press(GLFW_KEY_ENTER);
  hand.wait();
  EXPECT_EQ(hand.board().measured.slots.size(), 3u);
  hand.click("Fret by fret/Done");
  hand.wait();
  EXPECT_NE(hand.text("Checks/finding 1").find("Slot misplaced"), std::string::npos);
  hand.press(GLFW_KEY_Z, GLFW_MOD_CONTROL);
  hand.wait();
  EXPECT_EQ(hand.board().measured.slots.size(), 2u);
}

TEST(FretPage, AGrowingErrorIsTold) {
  Hand hand;
  change(hand, [&](Board& b) {
    for (const FretLine& f : hand.desk().results.good->prepared->layout().frets)
      if (f.fret > 0) b.measured.slots.push_back(f.middle.x * 1.0005);  // a machine that goes 0.05 % too far
  });
  hand.press(GLFW_KEY_L, GLFW_MOD_CONTROL);
  hand.wait();
  EXPECT_NE(hand.text("Fret by fret/summary").find("changes by 0.05 mm over each 100 mm"), std::string::npos)
      << hand.text("Fret by fret/summary");
}

}  // namespace
}  // namespace sagitta::test
