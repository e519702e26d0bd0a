/// The export's page: what is written, what of it, and how it will print.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <set>

#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;

/// Heron-six with the export's page open.
struct Sender : Hand {
  Sender() { open(); }
  void open() {
    press(GLFW_KEY_E, GLFW_MOD_CONTROL);
    frames(3);
  }
  /// Everything unticked but these kinds, to be quick.
  void only(std::initializer_list<bool viewer::Settings::*> kinds) {
    viewer::Settings& s = desk().settings;
    for (const auto kind :
         {&viewer::Settings::export_step, &viewer::Settings::export_stl, &viewer::Settings::export_three_mf,
          &viewer::Settings::export_dxf, &viewer::Settings::export_svg, &viewer::Settings::export_pdf,
          &viewer::Settings::export_csv, &viewer::Settings::export_png, &viewer::Settings::export_html})
      s.*kind = std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
    frames(2);
  }
  void send() {
    click("Export/Export");
    until([&] { return !desk().sending.state().running; }, 240);
    frames(2);
  }
  std::vector<std::uint8_t> window() {
    wait();
    return app().snapshot();
  }
};

TEST(Sending, ShowsThePagesAsTheyWillPrint) {
  Sender hand;
  const auto first = hand.window();
  EXPECT_EQ(hand.text("Export/print"), "template.pdf");
  const auto printed = hand.desk().paperwork.pages();
  ASSERT_TRUE(printed);
  EXPECT_EQ(hand.text("Export/page"), "Page 1 of " + std::to_string(printed->pages[0].of));
  // ISO 216: A4 is 297 mm by 210.
  EXPECT_NEAR(1.0 * printed->pages[0].picture.width / printed->pages[0].picture.height, 297.0 / 210, 0.002);
  std::set<std::string> documents;
  for (const viewer::PrintedPage& page : printed->pages) documents.insert(page.document);
  EXPECT_THAT(documents,
              testing::IsSupersetOf({"template.pdf", "shop-drawing.pdf", "inlay-drawing.pdf", "job-sheet.pdf"}));
  hand.click("Export/Next");
  const auto second = hand.window();
  EXPECT_THAT(hand.text("Export/page"), testing::StartsWith("Page 2"));
  EXPECT_GT(Hand::changed(first, second), 0.005);
  hand.choose("Export/document", "job-sheet.pdf");
  EXPECT_EQ(hand.text("Export/print"), "job-sheet.pdf");
  EXPECT_GT(Hand::changed(second, hand.window()), 0.02);
}

TEST(Sending, PrintsOnThePaperChosen) {
  Sender hand;
  hand.window();
  hand.choose("Export/paper", "Tabloid");
  hand.window();
  const auto printed = hand.desk().paperwork.pages();
  ASSERT_TRUE(printed);
  // ANSI B: 17 in by 11.
  EXPECT_NEAR(1.0 * printed->pages[0].picture.width / printed->pages[0].picture.height, 17.0 / 11, 0.002);
}

TEST(Sending, WritesOnlyTheSetUpsChosen) {
  Sender hand;
  Board draft = hand.board();
  draft.setups.resize(2);
  draft.setups[0].name = "pockets", draft.setups[0].operations = {Operation::pockets, Operation::inlay};
  draft.setups[1].name = "shape",
  draft.setups[1].operations = {Operation::radius, Operation::slots, Operation::outline};
  hand.desk().document.change(draft, "Test");
  hand.wait();
  hand.only({&viewer::Settings::export_dxf});
  hand.click("Export/pockets: pockets, inlay");
  hand.send();
  const fs::path setups = hand.folder() / "heron-six-export/setups";
  EXPECT_TRUE(fs::exists(setups / "shape-02/setup.dxf"));
  EXPECT_FALSE(fs::exists(setups / "pockets-01"));
}

TEST(Sending, LeavesThePiecesOut) {
  for (const bool wanted : {true, false}) {
    Sender hand;
    hand.only({&viewer::Settings::export_step});
    if (!wanted) hand.click("Export/Inlay pieces as solids too, flat and in place");
    hand.send();
    EXPECT_EQ(fs::exists(hand.folder() / "heron-six-export/pieces.step"), wanted);
    EXPECT_TRUE(fs::exists(hand.folder() / "heron-six-export/board.step"));
  }
}

TEST(Sending, WritesTheTrialStripIntoAFolderOfItsOwn) {
  Sender hand;
  hand.click("Export/A trial strip");
  hand.window();
  EXPECT_EQ(hand.text("Export/folder"), (hand.folder() / "heron-six-trial").string());
  EXPECT_EQ(hand.text("Export/print"), "trial-sheet.pdf");
  hand.send();
  for (const char* file : {"strip.step", "trial.dxf", "trial-sheet.pdf"})
    EXPECT_TRUE(fs::exists(hand.folder() / "heron-six-trial" / file)) << file;
}

}  // namespace
}  // namespace sagitta::test
