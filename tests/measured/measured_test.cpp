#include <gtest/gtest.h>

#include <cmath>

#include "findings/GoodBoard.hpp"
#include "layout/BlankPlace.hpp"
#include "measured/AsMeasured.hpp"
#include "measured/LeastSquares.hpp"
#include "measured/Record.hpp"

namespace sagitta::test {
namespace {

constexpr double close = 1e-9;

Board taken(const Board& planned) { return std::get<Board>(as_measured(planned)); }

PreparedBoard ready(const Board& board) {
  auto prepared = prepare(board);
  if (const auto* faults = std::get_if<Faults>(&prepared)) throw std::runtime_error(faults->front().message);
  return std::get<PreparedBoard>(std::move(prepared));
}

TEST(AsMeasured, TheBlankIsAsThickAsItWasMeasured) {
  Board board = good_board();
  board.measured.blank_thickness = 6.9;
  EXPECT_NEAR(ready(board).layout().blank_thickness, 6.9, close);
  board.blank.thickness = 7.5;
  EXPECT_NEAR(ready(board).layout().blank_thickness, 6.9, close);
  EXPECT_EQ(ready(board).planned(), board);
}

TEST(AsMeasured, TheTapeLiesUnderEverySetup) {
  Board board = good_board();
  board.setups = {{"one", {Operation::pockets}}, {"two", {Operation::radius}, Zero::nut, ZZero::bed, 0.3}};
  board.measured.tape = 0.22;
  const Board made = taken(board);
  for (const auto& setup : made.setups) EXPECT_NEAR(setup.tape, 0.22, close);
}

TEST(AsMeasured, SlotsAreAsWideAsTheyWereMeasured) {
  Board board = good_board();
  board.measured.slot_width = 0.62;
  for (const Slot& slot : ready(board).slots()) EXPECT_NEAR(slot.width, 0.62, close);
}

// 0.62 - 0.51 = 0.11: loose beyond a limit of 0.10, whatever the cutter's cut.
TEST(AsMeasured, TheWireIsJudgedInTheMeasuredSlot) {
  Board board = good_board();
  board.limits["slot-too-loose"] = 0.10;
  EXPECT_FALSE(found(board, "slot-too-loose"));
  board.measured.slot_width = 0.62;
  auto measured_board = board;
  const auto finding = found(taken(measured_board), "slot-too-loose");
  ASSERT_TRUE(finding);
  EXPECT_NEAR(finding->value, 0.11, close);
}

TEST(AsMeasured, APocketIsAsDeepAsItWasMeasuredAndItsPieceFollows) {
  Board board = good_board();
  board.measured.pocket_depths["shell-02"] = 1.62;
  const PreparedBoard made = ready(board);
  for (const InlayPiece& piece : made.pieces()) {
    EXPECT_NEAR(piece.depth, piece.name == "shell-02" ? 1.62 : 1.5, close);
    EXPECT_NEAR(piece.thickness, piece.name == "shell-02" ? 1.82 : 1.7, close);
  }
  int deep = 0;
  for (const Feature& feature : made.features(work_done_at(board, Stage::pocketed)))
    if (feature.kind == Source::Kind::pocket) {
      const bool measured = std::abs(feature.bound.value - (6.35 - 1.62)) < close;
      deep += measured;
      if (!measured) {
        EXPECT_NEAR(feature.bound.value, 6.35 - 1.5, close);
      }
    }
  EXPECT_EQ(deep, 1);
}

TEST(AsMeasured, PiecesAreAsThickAsTheyWereMeasured) {
  Board board = good_board();
  board.measured.piece_thickness["shell"] = 1.44;
  for (const InlayPiece& piece : ready(board).pieces()) EXPECT_NEAR(piece.thickness, 1.44, close);
}

TEST(AsMeasured, NamesThatNoPieceHasAreFaults) {
  Board board = good_board();
  board.measured.pocket_depths["shell-99"] = 1.5;
  board.measured.piece_thickness["bone"] = 1.5;
  const auto prepared = prepare(board);
  const auto* faults = std::get_if<Faults>(&prepared);
  ASSERT_TRUE(faults);
  ASSERT_EQ(faults->size(), 2U);
  EXPECT_EQ(faults->at(0).code, FaultCode::unknown_key);
  EXPECT_EQ(faults->at(0).key, "measured.pocket_depths");
  EXPECT_EQ(faults->at(1).key, "measured.piece_thickness");
}

TEST(AsMeasured, APocketThatLeavesTooLittleIsAFault) {
  Board board = good_board();
  board.measured.pocket_depths["shell-01"] = 6.06;  // 0.29 is left, and 0.3 is the least
  const auto prepared = prepare(board);
  const auto* faults = std::get_if<Faults>(&prepared);
  ASSERT_TRUE(faults);
  EXPECT_EQ(faults->front().code, FaultCode::floor_too_low);
  board.measured.pocket_depths["shell-01"] = 6.05;
  EXPECT_TRUE(std::holds_alternative<PreparedBoard>(prepare(board)));
}

// Radius 304.8: at y = 20 the surface lies 304.8 - sqrt(304.8^2 - 400) = 0.65687.. lower than at the middle.
TEST(AsMeasured, AThinnerBoardKeepsItsCutFloorsWhereTheyAre) {
  Board board = good_board();
  const double drop = 304.8 - std::sqrt(304.8 * 304.8 - 400);
  board.measured.thickness = {{100, 0, 6.35 - 0.12}, {300, 20, 6.35 - drop - 0.08}};
  const Board made = taken(board);
  EXPECT_NEAR(made.board.thickness, 6.25, close);  // the mean of 0.12 and 0.08 is lost
  EXPECT_NEAR(made.inlays[0].depth, 1.4, close);   // the floor stays at 4.85
  EXPECT_NEAR(*made.inlays[0].piece_thickness, 1.7, close);
  EXPECT_NEAR(*made.slots.depth, 1.95, close);  // not cut yet: counted from the new surface
  EXPECT_NEAR(*made.blank.thickness, 7.15, close);
  board.measured.done = {Operation::slots};
  EXPECT_NEAR(*taken(board).slots.depth, 1.85, close);
  EXPECT_NEAR(taken(board).nut.depth, 3.1, close);
  board.sanding = 0.05;  // it lies on top of what was measured
  EXPECT_NEAR(taken(board).board.thickness, 6.2, close);
}

// By hand: 0.2 less at x = 0 and 0.4 less at x = 400 is the line -0.2 - 0.0005 x.
TEST(AsMeasured, WidthsMoveTheEdgesByAStraightLine) {
  Board board = good_board();
  board.measured.widths = {{0, 55.36}, {400, 55.16}};
  const PreparedBoard made = ready(board);
  for (const double x : {0.0, 100.0, 400.0})
    EXPECT_NEAR(2 * made.layout().half_width(x), 55.56 - 0.2 - 0.0005 * x, close);
  board.measured.widths = {{200, 55.5}};
  EXPECT_NEAR(2 * ready(board).layout().half_width(0), 55.5, close);
}

TEST(AsMeasured, MarginsTakeTheWidthsHalfAndHalf) {
  Board board = good_board();
  board.board.nut_width.reset(), board.board.heel_width.reset();
  board.board.edge_margin = 4;  // 46 + 8 = 54
  board.measured.widths = {{0, 53.8}, {400, 53.8}};
  const PreparedBoard made = ready(board);
  EXPECT_NEAR(made.layout().edge(0, 0), 26.9, close);
  EXPECT_NEAR(made.layout().edge(1, 400), 26.9, close);
}

TEST(AsMeasured, PlacesBesideTheBoardAreFaults) {
  Board board = good_board();
  board.measured.widths = {{900, 55}};
  board.measured.thickness = {{100, 40, 6}};
  const auto made = as_measured(board);
  const auto* faults = std::get_if<Faults>(&made);
  ASSERT_TRUE(faults);
  ASSERT_EQ(faults->size(), 2U);
  for (const Fault& fault : *faults) EXPECT_EQ(fault.code, FaultCode::off_board);
}

TEST(AsMeasured, PlannedValuesChangeNothing) {
  Board board = good_board();
  board.setups = {{"one", {Operation::pockets}, Zero::nut, ZZero::bed, 0.3}};
  Board measured = board;
  measured.measured.blank_thickness = blank_thickness(board);
  measured.measured.tape = 0.3;
  measured.measured.slot_width = 0.58;
  measured.measured.widths = {{0, 55.56}, {200, 55.56}};
  measured.measured.thickness = {{0, 0, 6.35}, {50, 0, 6.35}};
  Board made = taken(measured);
  made.measured = {};
  EXPECT_EQ(made, board);
  measured.measured.pocket_depths = {{"shell-01", 1.5}};
  measured.measured.piece_thickness = {{"shell", 1.7}};
  EXPECT_EQ(ready(measured).inlays(), ready(board).inlays());
}

TEST(AsMeasured, AppliedAgainChangesNothing) {
  Board board = good_board();
  board.measured.blank_thickness = 6.9;
  board.measured.widths = {{0, 55.4}, {150, 55.3}, {400, 55.5}};
  board.measured.thickness = {{0, 0, 6.2}, {300, 10, 6.1}};
  board.measured.pocket_depths = {{"shell-01", 1.6}};
  const Board once = taken(board), twice = taken(once);
  EXPECT_NEAR(twice.board.thickness, once.board.thickness, close);
  EXPECT_NEAR(*twice.board.nut_width, *once.board.nut_width, close);
  EXPECT_NEAR(*twice.board.heel_width, *once.board.heel_width, close);
  EXPECT_NEAR(twice.measured.pocket_depths.at("shell-01"), once.measured.pocket_depths.at("shell-01"), close);
}

// Worked by hand: y = 1 + 2 x with errors 0.1, -0.2, 0.1 that the line does not follow.
TEST(LeastSquares, TheLineOfThreePoints) {
  const FittedLine line = least_squares({{0, 1.1}, {1, 2.8}, {2, 5.1}});
  EXPECT_NEAR(line.start, 1, close);
  EXPECT_NEAR(line.slope, 2, close);
  EXPECT_NEAR(least_squares({{5, 3}, {5, 4}}).at(100), 3.5, close);
}

TEST(Record, TellsPlannedAndMeasured) {
  Board board = good_board();
  board.measured.blank_thickness = 6.9;
  board.measured.pocket_depths = {{"shell-01", 1.6}};
  board.measured.widths = {{100, 55.5}};
  const auto values = measured_values(board, ready(board).inlays());
  ASSERT_EQ(values.size(), 3U);
  EXPECT_EQ(values[0].key, "measured.blank_thickness");
  EXPECT_NEAR(*values[0].planned, 7.15, close);
  EXPECT_EQ(values[1].key, "measured.pocket_depths.shell-01");
  EXPECT_NEAR(*values[1].planned, 1.5, close);
  EXPECT_NEAR(*values[2].planned, 55.56, close);
  EXPECT_NEAR(values[2].measured, 55.5, close);
}

// The chip's rim reaches 1 + 0.5 from the middle of a dot of 3 mm radius; at 2.8 it reaches 0.3 over its rim.
TEST(Chips, AreLeftWhereNoPieceCoversThem) {
  Board board = good_board();
  const Point dot = ready(board).layout().markers.front().centre;
  board.measured.chips = {{dot.x + 1, 0, 1}};
  EXPECT_FALSE(found(board, "chip-left"));
  board.measured.chips = {{dot.x + 2.8, 0, 1}};
  ASSERT_TRUE(found(board, "chip-left"));
  EXPECT_NEAR(found(board, "chip-left")->value, 0.3, close);
  board.measured.chips = {{200, 27.78 - 0.4, 2}};  // at the edge: a binding of 1.4 takes it
  ASSERT_TRUE(found(board, "chip-left"));
  board.binding = Binding{1.4, 0, {}, {}};
  EXPECT_FALSE(found(board, "chip-left"));
  board.binding = Binding{1.3, 0, {}, {}};
  EXPECT_NEAR(found(board, "chip-left")->value, 0.1, close);
}

}  // namespace
}  // namespace sagitta::test
