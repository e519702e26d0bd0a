/// Drawings let in as inlays: asserted on the board, on the pieces and on figures.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "gui/Hand.hpp"
#include "gui/NeckStep.hpp"
#include "overlay/InlayMarks.hpp"
#include "scene/Slabs.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;

/// A red square of 10 mm, and a blue one of 4 mm beside it.
std::string squares() {
  return "<svg xmlns='http://www.w3.org/2000/svg' width='16mm' height='10mm' viewBox='0 0 16 10'>"
         "<rect width='10' height='10' fill='#c02020'/><rect x='12' width='4' height='4' fill='#2020c0'/></svg>";
}

/// Heron-six with the squares let in at fret 3, at the size that they are drawn in, cut with 2 mm.
struct Squares : Hand {
  Squares() {
    fs::create_directory(folder() / "art");
    write(folder() / "art/squares.svg", squares());
    drop(folder() / "art/squares.svg");
    press(GLFW_KEY_ESCAPE), press(GLFW_KEY_ESCAPE);  // out of the field that it leads to
    Board draft = board();
    draft.inlays = {draft.inlays.back()};
    draft.inlays[0].frets = {3}, draft.inlays[0].across.reset(), draft.inlays[0].along = 16;
    Cutter cutter;
    cutter.name = "two", cutter.use = {CutterUse::pocket_detail, CutterUse::piece}, cutter.diameter = 2;
    cutter.cutting_length = 6;
    draft.cutters = {cutter};
    desk().document.change(draft, "Test");
    wait();
  }
};

TEST(Drawings, ADroppedDrawingBecomesAnInlay) {
  Hand hand;
  fs::create_directory(hand.folder() / "art");
  write(hand.folder() / "art/squares.svg", squares());
  const std::size_t before = hand.board().inlays.size(), steps = hand.desk().document.steps();
  hand.drop(hand.folder() / "art/squares.svg");
  hand.wait();
  ASSERT_EQ(hand.board().inlays.size(), before + 1);
  const Inlay& inlay = hand.board().inlays.back();
  EXPECT_EQ(inlay.shape, InlayShape::artwork);
  EXPECT_EQ((inlay.colours), (std::map<std::string, std::string>{{"#2020c0", "shell"}, {"#c02020", "shell"}}));
  EXPECT_TRUE(fs::exists(fs::path(hand.board().folder) / inlay.file));
  EXPECT_EQ(hand.desk().document.steps(), steps + 1);
  hand.choose("Decisions/inlays[" + std::to_string(before) + "].colours #c02020", "bone");
  hand.wait();
  EXPECT_EQ(hand.board().inlays.back().colours.at("#c02020"), "bone");
  const auto& pieces = hand.desk().results.good->prepared->inlays().pieces;
  EXPECT_EQ(std::count_if(pieces.begin(), pieces.end(), [](const InlayPiece& p) { return p.material == "bone"; }), 1);
}

TEST(Drawings, TheSameDrawingIsDroppedAgainFromElsewhere) {
  Hand hand;
  const std::size_t before = hand.board().inlays.size();
  fs::create_directory(hand.folder() / "art");
  Folder elsewhere;
  write(elsewhere.path / "squares.svg", squares());
  for (std::size_t i = 1; i <= 2; ++i) {
    hand.drop(elsewhere.path / "squares.svg");
    hand.wait();
    EXPECT_FALSE(hand.desk().view.failure);
    EXPECT_EQ(hand.board().inlays.size(), before + i);
  }
  write(elsewhere.path / "squares.svg", squares() + " ");
  hand.drop(elsewhere.path / "squares.svg");
  hand.wait();
  EXPECT_TRUE(hand.desk().view.failure) << "another drawing of that name";
  EXPECT_EQ(hand.board().inlays.size(), before + 2);
}

TEST(Drawings, WhatIsNoDrawingIsRefusedAndANeckIsTakenAsOne) {
  Hand hand;
  const Board before = hand.board();
  for (const char* name : {"photo.PNG", "page.pdf", "letter.odt"}) {
    write(hand.folder() / name, "bytes");
    hand.drop(hand.folder() / name);
    EXPECT_TRUE(hand.see("Board/failure").in_view) << name;
    EXPECT_EQ(hand.board(), before) << name;
    EXPECT_TRUE(hand.desk().versions.unopened.problems.empty()) << name << " was taken for a board";
    hand.click("Board/I have read it");
  }
  write_neck(hand.folder() / "neck.step", hand.desk().results.good->prepared->layout(), 0, 0);
  hand.drop(hand.folder() / "neck.step");
  hand.wait();
  ASSERT_TRUE(hand.board().neck);
  EXPECT_EQ(hand.board().neck->file, "neck.step");
  EXPECT_TRUE(hand.desk().results.good->neck && hand.desk().results.good->neck->shape);
}

TEST(Drawings, ADrawingIsChosenAndOneThatIsNoneIsRefused) {
  Hand hand;
  write(hand.folder() / "squares.svg", squares());
  write(hand.folder() / "torn.svg", "<svg><rect");
  const Board before = hand.board();
  hand.drop(hand.folder() / "torn.svg");
  EXPECT_EQ(hand.board(), before);
  EXPECT_THAT(hand.text("Board/failure"), testing::HasSubstr("torn.svg"));
  hand.click("Board/I have read it");
  EXPECT_FALSE(hand.sees("Board/failure"));
  hand.press(GLFW_KEY_O, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT);
  hand.frames(3);
  hand.click("Choose a drawing/squares.svg");
  hand.click("Choose a drawing/Take it");
  hand.wait();
  EXPECT_EQ(hand.board().inlays.back().file, "squares.svg");
}

TEST(Drawings, WhatTheCutterCannotReachIsShadedWithItsFigure) {
  Squares hand;
  const auto before = hand.app().snapshot();
  hand.press(GLFW_KEY_W);
  hand.wait();
  // A square opened by r loses (4 - pi) r^2, whatever its size: two squares, a cutter of r = 1 mm, and the 0.0015 mm of
  // room that a fit leaves it.
  const double r = 1 + 0.0015;
  EXPECT_NEAR(std::stod(hand.text("Board/lost area")), 2 * (4 - std::numbers::pi) * r * r, 0.004);  // arcs as chords
  EXPECT_GT(Hand::changed(before, hand.app().snapshot()), 0);
}

TEST(Drawings, PiecesAreLiftedAndWhatIsLeftOfThemIsTold) {
  Squares hand;
  const auto before = hand.picture();
  hand.press(GLFW_KEY_O);
  const auto lifted = hand.picture();
  EXPECT_GT(Hand::changed(before, lifted), 0.0005);
  hand.press(GLFW_KEY_O);
  hand.press(GLFW_KEY_2), hand.press(GLFW_KEY_Q);
  EXPECT_GT(Hand::changed(hand.picture(), before), 0.0005);
  // TRADE: a piece 1.27 mm deep at y = 22 keeps -0.05, +0.27, +0.48 on 7.25, 9.5 and 12 in.
  for (const auto& [inches, left] : {std::pair(7.25, -0.05), {9.5, 0.27}, {12.0, 0.48}}) {
    Board draft = hand.board();
    draft.surface = {Profile::single, inches * 25.4, {}, HeelAt::heel, {}, {}};
    hand.desk().document.change(draft, "Test");
    hand.wait();
    InlayPiece piece;
    piece.depth = 1.27, piece.thickness = 1.47;
    EXPECT_NEAR(viewer::left_of_piece(piece, hand.desk().results.good->prepared->surface(), {50, 22}), left,
                0.0051);  // printed digits
  }
}

TEST(Drawings, AnInlayIsDraggedAndSnapsBackToItsMiddle) {
  Squares hand;
  hand.press(GLFW_KEY_2), hand.press(GLFW_KEY_R);
  hand.open_group(6);
  hand.wait();
  const Marker& marker = hand.desk().results.good->prepared->layout().markers.front();
  const auto pixel = [&](double x, double y) {
    const viewer::Seen picture = hand.see("Board/picture");
    const auto at = hand.desk().view.camera.project({static_cast<float>(x), static_cast<float>(y), 6.3f});
    return ImVec2(picture.low.x + at->x, picture.low.y + at->y);
  };
  const ImVec2 from = pixel(marker.centre.x - 3, marker.centre.y), to = pixel(marker.centre.x + 27, marker.centre.y);
  hand.click_at(from.x, from.y);  // names it and takes it in hand
  const std::size_t steps = hand.desk().document.steps();
  hand.drag_from(from.x, from.y, to.x - from.x, 0);
  hand.wait();
  EXPECT_NEAR(hand.board().inlays[0].shift_along, 30, 1.5);  // a pixel is about 0.7 mm
  EXPECT_EQ(hand.board().inlays[0].shift_across, 0);         // it snaps to the centre line
  EXPECT_EQ(hand.desk().document.steps(), steps + 1);
}

TEST(Drawings, SheetsShowTheirPieces) {
  Squares hand;
  Board draft = hand.board();
  for (const char* material : {"shell"}) {
    Sheet sheet;
    sheet.material = material, sheet.length = 60, sheet.width = 40, sheet.thickness = 2;
    draft.sheets.push_back(sheet);
  }
  hand.desk().document.change(draft, "Test");
  hand.wait();
  hand.press(GLFW_KEY_S);
  hand.wait();
  EXPECT_EQ(hand.text("Sheets with their pieces/sheet 1"), "2");
  EXPECT_NEAR(std::stod(hand.text("Sheets with their pieces/shell-01")), 10, 0.05);
  EXPECT_EQ(hand.text("Sheets with their pieces/missing"), "");
}

TEST(Drawings, AStoppedFitIsTakenUpAgain) {
  Squares hand;
  InlayFitter fitter;
  const Drawn drawn = std::get<Drawn>(draw(hand.board()));
  const Cancel stopped;
  stopped.request();
  EXPECT_EQ(fitter.fit(drawn, stopped, {}), nullptr);
  const auto fitted = fitter.fit(drawn, {}, {});
  ASSERT_TRUE(fitted);
  EXPECT_EQ(fitted->inlays.pieces.size(), 2U);
}

TEST(Drawings, SlabsAreTheRegion) {
  // An L with a hole in it: 10 x 10 less 6 x 6, less a hole of 1 x 1.
  const Region region{{{0, 0}, {10, 0}, {10, 4}, {4, 4}, {4, 10}, {0, 10}}, {{1, 1}, {1, 2}, {2, 2}, {2, 1}}};
  double area = 0;
  for (const viewer::Slab& s : viewer::slabs(region))
    area += (s.b - s.a) * (s.high_a - s.low_a + s.high_b - s.low_b) / 2;
  EXPECT_NEAR(area, 63, 1e-9);
}

}  // namespace
}  // namespace sagitta::test
