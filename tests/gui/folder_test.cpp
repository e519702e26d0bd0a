/// The folder on the export's page: whose it is, what stands there, and what must be chosen before it is written.

#include "folder/Folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "Places.hpp"
#include "folder/Digest.hpp"
#include "folder/Manifest.hpp"
#include "gui/Hand.hpp"
#include "gui/StandIn.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;

/// A folder as Sagitta writes it, of a board of this name.
void export_of(const fs::path& path, const std::string& board) {
  sagitta::Folder folder(path, false);
  folder.add("frets.csv", "fret");
  folder.add(
      manifest_name,
      manifest_text(
          {"0", "name = \"" + board + "\"\n", {{"frets.csv", "", "csv", 4, sha256("fret"), {}, {}, {}}}, "{}", "[]"}));
  folder.keep();
}

/// Heron-six with the export's page open, tables only.
struct Sender : Hand {
  Sender() { open(); }
  void open() {
    viewer::Settings& s = desk().settings;
    s.export_step = s.export_stl = s.export_three_mf = s.export_dxf = s.export_svg = s.export_pdf = false;
    s.export_png = s.export_html = s.export_pieces = false;
    press(GLFW_KEY_E, GLFW_MOD_CONTROL);
    frames(3);
  }
  void close_page() {
    click("Export/Close");
    frames(2);
  }
  void send(const std::string& button) {
    click("Export/" + button);
    until([&] { return !desk().sending.state().running; }, 240);
    frames(2);
  }
  fs::path own() const { return folder() / "heron-six-export"; }
};

TEST(SendingFolder, FollowsTheBoard) {
  Sender hand;
  EXPECT_EQ(hand.text("Export/folder"), hand.own().string());
  hand.close_page();
  fs::copy_file(fs::path(places::source()) / "presets/reed-tenor.toml", hand.folder() / "reed.toml");
  hand.drop(hand.folder() / "reed.toml");
  hand.wait();
  hand.open();
  EXPECT_EQ(hand.text("Export/folder"), (hand.folder() / "reed-export").string());
}

TEST(SendingFolder, WithSomethingElseInItCannotBeReplaced) {
  Sender hand;
  hand.close_page();
  fs::create_directory(hand.own());
  write(hand.own() / "photo.jpg", "a heron");
  hand.open();
  EXPECT_EQ(hand.text("Export/place"), "photo.jpg");
  EXPECT_FALSE(hand.see("Export/Export").enabled);
  EXPECT_EQ(text_of(hand.own() / "photo.jpg"), "a heron");
}

TEST(SendingFolder, OfTheSameBoardIsReplacedAtOnce) {
  Sender hand;
  hand.send("Export");
  hand.click("Export/Done");
  hand.frames(2);
  hand.open();
  hand.send("Replace");
  EXPECT_TRUE(hand.desk().sending.state().good) << hand.desk().sending.state().outcome;
  EXPECT_TRUE(fs::exists(hand.own() / "frets.json"));
}

TEST(SendingFolder, OfAnotherBoardIsNamedAndMustBeChosen) {
  Sender hand;
  hand.close_page();
  export_of(hand.own(), "Curlew");
  hand.open();
  EXPECT_EQ(hand.text("Export/place"), "Curlew");
  EXPECT_FALSE(hand.see("Export/Replace").enabled);
  hand.click("Export/Replace that of \u201cCurlew\u201d");
  hand.send("Replace");
  EXPECT_TRUE(hand.desk().sending.state().good) << hand.desk().sending.state().outcome;
  EXPECT_TRUE(fs::exists(hand.own() / "frets.json"));
}

// Slots 2 mm deep for a tang of 2.2 mm leave the frets 0.2 mm too high: slot-too-shallow says stop.
TEST(SendingFolder, AStopStandsBesideTheButtonAndNeedsATick) {
  Sender hand;
  hand.close_page();
  Board draft = hand.board();
  draft.slots.depth = 2, draft.wire.tang_depth = 2.2;
  hand.desk().document.change(draft, "Test");
  hand.wait();
  hand.open();
  EXPECT_FALSE(hand.see("Export/Export").enabled);
  EXPECT_NEAR(hand.see("Export/stops").low.y, hand.see("Export/Export").low.y, 4);
  EXPECT_TRUE(hand.see("Export/Export").in_view);
  hand.click("Export/stops");
  hand.frames(2);
  hand.send("Export");
  EXPECT_TRUE(hand.desk().sending.state().good) << hand.desk().sending.state().outcome;
  EXPECT_THAT(text_of(hand.own() / "manifest.json"), testing::HasSubstr("\"slot-too-shallow\""));
}

// A look is to be read beside the button; it asks for no tick.
TEST(SendingFolder, ALookStandsBesideTheButton) {
  Sender hand;
  hand.close_page();
  const auto looks = [&] {
    const auto& findings = hand.desk().results.good->findings;
    return std::count_if(findings.begin(), findings.end(),
                         [](const Finding& f) { return f.severity == Severity::look; });
  };
  for (double width = 0.584; looks() == 0 && width > 0.4; width -= 0.02) {
    Board draft = hand.board();
    draft.slots.width = width;
    hand.desk().document.change(draft, "Test");
    hand.wait();
  }
  ASSERT_GT(looks(), 0);
  hand.open();
  EXPECT_EQ(hand.text("Export/looks"), std::to_string(looks()));
  EXPECT_NEAR(hand.see("Export/looks").low.y, hand.see("Export/Export").low.y, 8);
  EXPECT_TRUE(hand.see("Export/Export").enabled);
}

TEST(SendingFolder, WhatItHoldsIsShownAndItIsOpenedWithoutAShell) {
  Sender hand;
  const fs::path odd = hand.folder() / "a board's $(touch spoiled); folder";
  hand.desk().forms.sending.folder = odd.string();
  hand.frames(3);
  hand.send("Export");
  ASSERT_TRUE(hand.desk().sending.state().good) << hand.desk().sending.state().outcome;
  for (const fs::directory_entry& entry : fs::directory_iterator(odd)) {
    const std::string name = entry.path().filename().string() + (entry.is_directory() ? "/" : "");
    EXPECT_TRUE(hand.sees("Export/written " + name)) << name;
  }
  StandIn file_manager(hand.folder(), "xdg-open");
  hand.click("Export/Open folder");
  hand.until([&] { return fs::exists(file_manager.told); }, 20);
  EXPECT_EQ(text_of(file_manager.told), odd.string() + "\n");
  EXPECT_FALSE(fs::exists(fs::current_path() / "spoiled"));
  hand.click("Export/Copy the folder's path");
  hand.frames(2);
  EXPECT_STREQ(ImGui::GetClipboardText(), odd.string().c_str());
}

}  // namespace
}  // namespace sagitta::test
