/// Turned and sized by hand on the board, against points of the board that are worked out here.

#include <gtest/gtest.h>

#include <cmath>

#include "gui/GripHand.hpp"

namespace sagitta::test {
namespace {

double degrees(double radians) { return radians * 180 / half_turn; }

TEST(Grips, TurnByTheAngleBetweenTwoPointsOfTheBoard) {
  for (const std::string preset : {"heron-six", "tern-inch-left"}) {
    GripHand hand({preset});
    hand.choose();
    const double side = preset == "tern-inch-left" ? -1 : 1;  // its mirror: BOARD-FILE, "artwork included"
    const ImVec2 from = hand.grip("turning grip");
    const Pulled pulled = hand.pull(from, {from.x + 47, from.y + 13}, false);
    EXPECT_GT(std::abs(pulled.angle), 20);
    EXPECT_NEAR(hand.inlay().turn_degrees, side * pulled.angle, half_turn_grid) << preset;
    EXPECT_EQ(hand.inlay().along, 20);
  }
}

TEST(Grips, TurnFromTheTurnThatItHas) {
  GripHand hand;
  Board draft = hand.board();
  draft.inlays[0].turn_degrees = 170;
  hand.show(draft);
  hand.choose();
  const double angle = hand.turn(33, false).angle;
  EXPECT_GT(angle, 20);
  EXPECT_NEAR(hand.inlay().turn_degrees, 170 + angle - 360, half_turn_grid) << "over 180: the same in one turn";
}

TEST(Grips, TurningSnapsToFifteenDegreesUnlessShiftIsHeld) {
  for (const bool snaps : {true, false}) {
    GripHand hand;
    hand.choose();
    const double angle = hand.turn(31.4, snaps).angle;
    ASSERT_NEAR(angle, 31.4, 0.9);
    if (snaps)
      EXPECT_EQ(hand.inlay().turn_degrees, 30);
    else
      EXPECT_NEAR(hand.inlay().turn_degrees, angle, half_turn_grid);
  }
  GripHand hand;
  hand.choose();
  const double angle = hand.turn(37.5, true).angle;
  ASSERT_NEAR(angle, 37.5, 4.9);
  EXPECT_NEAR(hand.inlay().turn_degrees, angle, half_turn_grid) << "half-way nothing snaps";
}

TEST(Grips, TurningSnapsToTheSlantOfTheFrets) {
  GripHand hand({"curlew-seven-fan"}, {2});
  hand.choose();
  const auto& frets = hand.desk().results.good->prepared->layout().frets;
  const auto slant = [&](std::size_t i) {
    return degrees(std::atan2(frets[i].bass.x - frets[i].treble.x, frets[i].treble.y - frets[i].bass.y));
  };
  const double wanted = (slant(1) + slant(2)) / 2;  // of two unit vectors the sum halves the angle
  ASSERT_GT(std::abs(wanted), 4);
  hand.turn(wanted + 1, true, false);
  EXPECT_NE(hand.text("Board/grip reading").find("as its frets"), std::string::npos);
  hand.release();
  EXPECT_NEAR(hand.inlay().turn_degrees, wanted, 0.005 + 1e-9);  // written in hundredths
}

TEST(Grips, SizeByTheRatioOfTheDistancesFromTheMiddle) {
  GripHand hand;
  hand.choose();
  for (int corner = 1; corner <= 4; ++corner) {
    const ImVec2 from = hand.grip("sizing grip " + std::to_string(corner)), at = hand.window_of(hand.marker());
    // Outward, and off the diagonal.
    const ImVec2 to(from.x + (from.x - at.x) * 0.23f + 5, from.y + (from.y - at.y) * 0.23f - 3);
    const double ratio = hand.pull(from, to, false).ratio;
    EXPECT_GT(ratio, 1.1);
    EXPECT_NEAR(*hand.inlay().along, 20 * ratio, half_size_grid) << corner;
    EXPECT_FALSE(hand.inlay().across) << "the drawing's own proportions give the other size";
    EXPECT_EQ(hand.inlay().turn_degrees, 0);
    Board draft = hand.board();
    draft.inlays[0].along = 20;
    hand.show(draft);
  }
}

TEST(Grips, ABlocksSizesKeepTheirProportion) {
  GripHand hand;
  Board draft = hand.board();
  Inlay block;
  block.shape = InlayShape::block, block.along = 12, block.across = 30, block.depth = 1.5, block.frets = {5};
  block.turn_degrees = 20;
  draft.inlays = {block};
  hand.show(draft);
  hand.near(hand.marker());
  hand.choose();
  const double ratio = hand.size(0.7, false, true, 3).ratio;
  EXPECT_NEAR(*hand.inlay().along, 12 * ratio, half_size_grid);
  EXPECT_NEAR(*hand.inlay().across / *hand.inlay().along, 30.0 / 12, 0.001);
}

TEST(Grips, SizingSnapsToWholeMillimetres) {
  for (const bool snaps : {true, false}) {
    GripHand hand;
    hand.choose();
    const double wanted = 20 * hand.size(14.2 / 20, snaps).ratio;
    ASSERT_LT(std::abs(wanted - 14), 0.49);
    ASSERT_GT(std::abs(wanted - 14), 0.06);
    if (snaps)
      EXPECT_EQ(*hand.inlay().along, 14);
    else
      EXPECT_NEAR(*hand.inlay().along, wanted, half_size_grid);
  }
}

TEST(Grips, SizingSnapsToWhatFitsBetweenItsFrets) {
  GripHand hand;
  Board draft = hand.board();
  draft.inlays[0].turn_degrees = 30;
  hand.show(draft);
  hand.choose();
  const Layout& layout = hand.desk().results.good->prepared->layout();
  // Between the slots' near walls, less the clearance and the millimetre that thin-wall-at-slot asks for on each side,
  // must go the turned oblong: 20 k cos 30 + 10 k sin 30 long.
  const double room =
      layout.frets[3].middle.x - layout.frets[2].middle.x - hand.board().slots.width - 2 * (hand.inlay().clearance + 1);
  const double fits = 20 * room / (20 * std::cos(half_turn / 6) + 10 * std::sin(half_turn / 6));
  hand.size((fits + 0.4) / 20, true, false);
  EXPECT_NE(hand.text("Board/grip reading").find("fits its space"), std::string::npos);
  hand.release(), hand.wait();
  EXPECT_LE(*hand.inlay().along, fits);
  EXPECT_GT(*hand.inlay().along, fits - 0.02);  // written in hundredths
  for (const Finding& f : hand.desk().results.good->findings) {
    EXPECT_NE(f.name, "inlay-on-slot");
    EXPECT_NE(f.name, "thin-wall-at-slot");
  }
}

TEST(Grips, TheFigureStandsBesideThePointer) {
  GripHand hand;
  hand.choose();
  hand.size(0.8, true, false);
  const ImVec2 to = ImGui::GetIO().MousePos;
  const viewer::Seen seen = hand.see("Board/grip reading");
  EXPECT_EQ(seen.text, "16 \u00d7 8 mm");
  EXPECT_LT(std::abs((seen.low.x + seen.high.x) / 2 - to.x), 100);
  EXPECT_LT(std::abs((seen.low.y + seen.high.y) / 2 - to.y), 60);
  hand.release();
  EXPECT_FALSE(hand.sees("Board/grip reading"));
  hand.turn(45, true, false);
  EXPECT_EQ(hand.text("Board/grip reading"), "45\u00b0");
}

}  // namespace
}  // namespace sagitta::test
