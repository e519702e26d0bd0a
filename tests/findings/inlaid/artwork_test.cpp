// Pieces of inlay under the radius, beside slots, edges and each other: rectangles, where nothing else is said.

#include <numbers>

#include "findings/Findings.hpp"
#include "findings/MorePairs.hpp"
#include "inlaid/PieceDepth.hpp"
#include "wood/Weight.hpp"

namespace sagitta::test {
namespace {

/// A piece 4 mm long that reaches out to y = 22, on the good board with another radius.
struct Reaching {
  Board board = good_board();
  InlayPiece piece;

  Reaching(double radius, double depth) {
    board.surface.radius_at_nut = radius;
    board.inlays[0].shape = InlayShape::artwork;
    board.inlays[0].depth = depth;
    piece.name = "shell-01";
    piece.depth = depth;
    piece.fret = 3;
    piece.thickness = depth + 0.2;
    set({100, -4}, {104, 22});
  }
  /// The pocket is the piece here: a clearance would round its corners.
  void set(Point low, Point high) { piece.piece = piece.pocket = {rectangle(low, high)}; }
  PieceDepth depth() const { return *piece_depth(with_inlays(board, {}), piece); }
  /// What is found of this name with these pieces alone.
  std::vector<Finding> found(std::string_view name, const std::vector<InlayPiece>& pieces) const {
    const Inlays inlays{pieces, {}, {}};
    std::vector<Finding> named;
    for (Finding& finding : findings_of(with_inlays(board, inlays)))
      if (finding.name == name) named.push_back(std::move(finding));
    return named;
  }
  std::vector<Finding> found(std::string_view name) const { return found(name, {piece}); }
};

// TRADE: a piece of 1.27 mm at y = 22 leaves -0.05, +0.27, +0.48 on 7.25, 9.5 and 12 in; one of 1.524 mm .21, .52, .73.
TEST(PieceDepth, IsThatOfTheTradesTable) {
  constexpr double two_decimals = 0.005 + 1e-6;  // 0.475000 stands there as 0.48
  const struct { double radius, thin, thick; } rows[] = {{7.25, -0.05, 0.21}, {9.5, 0.27, 0.52}, {12, 0.48, 0.73}};
  for (const auto& row : rows) {
    const PieceDepth thin = Reaching(row.radius * inch, 1.27).depth();
    EXPECT_NEAR(thin.least, row.thin, two_decimals) << row.radius;
    EXPECT_NEAR(Reaching(row.radius * inch, 1.524).depth().least, row.thick, two_decimals) << row.radius;
    const double r = row.radius * inch;
    EXPECT_NEAR(thin.least, 1.27 - (r - std::sqrt(r * r - 22 * 22)), 1e-9) << row.radius;
    EXPECT_NEAR(thin.least_at.y, 22, 1e-9);
  }
}

TEST(PieceDepth, TellsWhatIsToSpareAndWhatStandsOverTheBlank) {
  const Reaching reaching(12 * inch, 1.5);
  EXPECT_NEAR(reaching.depth().most, 1.5, 1e-9);  // on the centre line
  EXPECT_NEAR(reaching.depth().spare, 0.2, 1e-9);
  EXPECT_NEAR(reaching.depth().over_blank, 0.2 - 0.8, 1e-9);  // BOARD-FILE: the blank stands 0.8 mm over the board
}

/// A cylinder is highest on the centre line, wherever the piece's sides begin and end.
TEST(PieceDepth, FindsTheCrownBetweenItsStations) {
  Reaching reaching(7.25 * inch, 1.5);
  for (const double low : {-3.3, -0.01, -7.77}) {
    reaching.set({100, low}, {104, 12.41});
    EXPECT_NEAR(reaching.depth().most, 1.5, 1e-12) << low;
    EXPECT_NEAR(reaching.depth().most_at.y, 0, 1e-12) << low;
  }
}

TEST(PieceDepth, LooksOnlyWhereTheBoardIs) {
  Reaching reaching(12 * inch, 1.5);
  reaching.piece.piece = {rectangle({100, 30}, {104, 34})};
  EXPECT_FALSE(piece_depth(with_inlays(reaching.board, {}), reaching.piece).has_value());
}

TEST(InlayFindings, StopWhereThePieceIsSandedThrough) {
  const std::vector<Finding> found = Reaching(7.25 * inch, 1.27).found("inlay-sanded-through");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NEAR(found[0].value, -0.05, 0.005);
  EXPECT_NEAR(found[0].at[1], 22, 1e-9);
  EXPECT_TRUE(Reaching(12 * inch, 1.524).found("inlay-sanded-through").empty());
}

TEST(InlayFindings, LookWhereThePieceIsTooLow) {
  Reaching reaching(12 * inch, 1.5);
  reaching.piece.thickness = 1.4;
  const std::vector<Finding> found = reaching.found("pocket-too-deep");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_NEAR(found[0].value, -0.1, 1e-9);
}

// Fret n lies at L (1 - 2^(-n/12)): equal temperament, closed form.
const double fret2 = 25.5 * inch * (1 - std::exp2(-2 / 12.0));
constexpr double half_slot = 0.29;

TEST(InlayFindings, MeasureTheWallToASlot) {
  Reaching reaching(12 * inch, 1.5);
  reaching.set({60, -4}, {fret2 - half_slot - 0.99, 4});
  const std::vector<Finding> thin = reaching.found("thin-wall-at-slot");
  ASSERT_EQ(thin.size(), 1U);
  EXPECT_NEAR(thin[0].value, 0.99, 0.0001);
  EXPECT_NEAR(thin[0].at[0], fret2 - half_slot, 0.0001);
  reaching.set({60, -4}, {fret2 - half_slot - 1.01, 4});
  EXPECT_TRUE(reaching.found("thin-wall-at-slot").empty());
}

TEST(InlayFindings, TakeTheClampingErrorOffAWall) {
  Reaching reaching(12 * inch, 1.5);
  reaching.set({60, -4}, {fret2 - half_slot - 1.1, 4});
  EXPECT_TRUE(reaching.found("thin-wall-at-slot").empty());
  reaching.board.setups.resize(2);
  reaching.board.setups[0].operations = {Operation::pockets};
  reaching.board.setups[1].operations = {Operation::slots};
  for (auto& setup : reaching.board.setups) setup.reclamp_error = 0.2;
  const std::vector<Finding> thin = reaching.found("thin-wall-at-slot");
  ASSERT_EQ(thin.size(), 1U);
  EXPECT_NEAR(thin[0].value, 1.1 - 0.2, 0.0001);
}

TEST(InlayFindings, NameTheSliverThatASlotLeaves) {
  Reaching reaching(12 * inch, 1.5);
  reaching.set({60, -4}, {fret2 + half_slot + 0.7, 4});
  const std::vector<Finding> on = reaching.found("inlay-on-slot"), sliver = reaching.found("inlay-sliver");
  ASSERT_EQ(on.size(), 1U);
  EXPECT_NEAR(on[0].value, -(0.7 + 2 * half_slot), 0.0001);  // it must go back by so much
  ASSERT_EQ(sliver.size(), 1U);
  EXPECT_NEAR(sliver[0].value, 0.7, 0.0001);
  EXPECT_NEAR(sliver[0].at[0], fret2 + half_slot + 0.35, 0.001);
  EXPECT_TRUE(reaching.found("thin-wall-at-slot").empty());
  reaching.set({60, -4}, {fret2 + half_slot + 1.1, 4});
  EXPECT_TRUE(reaching.found("inlay-sliver").empty());
}

TEST(InlayFindings, LookWhereAPieceStandsProudOfTheSlotCutter) {
  Reaching reaching(12 * inch, 1.5);
  reaching.set({60, -4}, {80, 4});
  EXPECT_TRUE(reaching.found("proud-in-slot-path").empty());  // levelled by the radius before
  reaching.board.order = {Operation::pockets, Operation::radius, Operation::inlay, Operation::slots,
                          Operation::outline};
  const std::vector<Finding> proud = reaching.found("proud-in-slot-path");
  ASSERT_EQ(proud.size(), 1U);
  EXPECT_NEAR(proud[0].value, 0.2, 1e-6);  // 1.7 thick in a pocket of 1.5, on the centre line
}

TEST(InlayFindings, MeasureTheWallToTheEdge) {
  Reaching reaching(12 * inch, 1.5);
  reaching.set({40, 0}, {60, 27.78 - 1.4});
  const std::vector<Finding> thin = reaching.found("thin-wall-at-edge");
  ASSERT_EQ(thin.size(), 1U);
  EXPECT_NEAR(thin[0].value, 1.4, 1e-9);
  reaching.set({40, 0}, {60, 27.78 - 1.6});
  EXPECT_TRUE(reaching.found("thin-wall-at-edge").empty());
  reaching.set({40, -27.78 - 3}, {60, 0});  // the other edge, and over it
  EXPECT_NEAR(reaching.found("thin-wall-at-edge").at(0).value, -3, 1e-9);
}

void clamp_anew(Board& board, Operation first, Operation second, double error) {
  board.setups.resize(2);
  board.setups[0].operations = {first};
  board.setups[1].operations = {second};
  for (auto& setup : board.setups) setup.reclamp_error = error;
}

// 3 mm to the edge, less a binding 1.2 mm wide and 0.2 mm of clamping error.
TEST(InlayFindings, TakeBindingAndClampingErrorOffAWallAtTheEdge) {
  Reaching reaching(12 * inch, 1.5);
  reaching.board.limits["thin-wall-at-edge"] = 100;
  reaching.set({40, 0}, {60, 27.78 - 3});
  EXPECT_NEAR(reaching.found("thin-wall-at-edge").at(0).value, 3, 1e-9);
  reaching.board.binding = Binding{1.2, 0, {}, {}};
  EXPECT_NEAR(reaching.found("thin-wall-at-edge").at(0).value, 3 - 1.2, 1e-9);
  clamp_anew(reaching.board, Operation::pockets, Operation::outline, 0.2);
  EXPECT_NEAR(reaching.found("thin-wall-at-edge").at(0).value, 3 - 1.2 - 0.2, 1e-9);
}

// A dot of 6 mm and a clearance of 0.05 on the centre line of a board 55.56 wide; the wall to an edge is 24.73.
TEST(InlayFindings, TakeBindingAndClampingErrorOffADotsWallAtTheEdge) {
  Board board = good_board();
  EXPECT_NEAR(measured(board, "thin-wall-at-edge"), 27.78 - 3 - 0.05, 1e-9);
  board.binding = Binding{1.2, 0, {}, {}};
  EXPECT_NEAR(measured(board, "thin-wall-at-edge"), 27.78 - 3 - 0.05 - 1.2, 1e-9);
  clamp_anew(board, Operation::pockets, Operation::outline, 0.2);
  EXPECT_NEAR(measured(board, "thin-wall-at-edge"), 27.78 - 3 - 0.05 - 1.2 - 0.2, 1e-9);
}

// An inside corner of angle a keeps a disc of radius r at r / sin(a/2) from its point. A diamond 8 by 20 is sharpest
// where tan(a/2) = 8/20; a trapezoid 8 long, 4 and 10 across, at its wide end, where tan a = 8 / ((10 - 4) / 2).
TEST(InlayFindings, MeasureTheSharpestCornerOfASimpleShape) {
  Board board = good_board();
  add_cutter(board, CutterUse::pocket_detail, 1);
  EXPECT_NEAR(measured(board, "corner-rounded"), 0, 1e-12);  // a dot has none
  Inlay& inlay = board.inlays[0];
  inlay.shape = InlayShape::diamond;
  inlay.along = 8, inlay.across = 20;
  EXPECT_NEAR(measured(board, "corner-rounded"), 0.5 * (std::hypot(8, 20) / 8 - 1), 1e-9);
  inlay.shape = InlayShape::trapezoid;
  inlay.across = {}, inlay.across_nut = 4, inlay.across_heel = 10;
  EXPECT_NEAR(measured(board, "corner-rounded"), 0.5 * (1 / std::sin(std::atan2(8, 3) / 2) - 1), 1e-9);
}

// BOARD-FILE: measured_cut stands for diameter + runout wherever a cut's width is asked for.
TEST(CutterFindings, TakeTheMeasuredCut) {
  Board board = good_board();
  add_cutters(board, 3, 0.55);
  board.cutters[1].runout = 0.01;
  EXPECT_NEAR(measured(board, "slot-cutter-too-wide"), 0.55 + 0.01 - 0.58, 1e-12);
  board.cutters[1].measured_cut = 0.6;
  EXPECT_NEAR(measured(board, "slot-cutter-too-wide"), 0.6 - 0.58, 1e-12);
  Board blocks = good_board();
  make_block(blocks, 8, 20, 5);
  add_cutter(blocks, CutterUse::pocket_detail, 1).measured_cut = 1.4;
  EXPECT_NEAR(measured(blocks, "corner-rounded"), 0.7 * (std::sqrt(2) - 1), 1e-9);
}

// Discs of radii 8 and 5 whose centres are d apart are parted by 13 - d, also where one lies within the other; squares
// by what they overlap along the side along which that is less.
TEST(InlayFindings, MeasureTheWayThatPartsTwoInlays) {
  Board board = good_board();
  board.inlays[0].clearance = 0;
  board.inlays[0].frets = {3};
  board.inlays[0].diameter = 16;
  board.inlays.push_back(board.inlays[0]);
  board.inlays[1].diameter = 10;
  for (const double d : {12.5, 9.0, 1.0}) {
    board.inlays[1].shift_across = d;
    EXPECT_NEAR(measured(board, "inlays-close"), d - 13, 1e-6) << d;
  }
  for (Inlay& inlay : board.inlays) {
    inlay.shape = InlayShape::block;
    inlay.along = 9;
    inlay.across = 9;
  }
  board.inlays[1].shift_across = 7;
  board.inlays[1].shift_along = 3;
  EXPECT_NEAR(measured(board, "inlays-close"), -2, 1e-6);
}

TEST(InlayFindings, MeasureTheWallBetweenTwoDrawings) {
  Reaching reaching(12 * inch, 1.5);
  reaching.set({40, -4}, {50, 4});
  InlayPiece other = reaching.piece;
  other.fret = 4;
  other.name = "shell-02";
  other.piece = other.pocket = {rectangle({50.4, -4}, {58, 4})};
  EXPECT_NEAR(reaching.found("inlays-close", {reaching.piece, other}).at(0).value, 0.4, 0.0001);
  other.piece = other.pocket = {rectangle({49.7, -4}, {58, 4})};
  const std::vector<Finding> over = reaching.found("inlays-close", {reaching.piece, other});
  ASSERT_EQ(over.size(), 1U);  // once, not once from each side
  EXPECT_NEAR(over[0].value, -0.3, 0.0001);
  other.fret = reaching.piece.fret;  // of one drawing: fitted to each other
  EXPECT_TRUE(reaching.found("inlays-close", {reaching.piece, other}).empty());
}

TEST(InlayFindings, NameTheWorstPieceAndCountTheOthers) {
  Reaching reaching(12 * inch, 1.5);
  std::vector<InlayPiece> pieces(3, reaching.piece);
  for (int i = 0; i < 3; ++i) {
    pieces[i].name = "shell-0" + std::to_string(i + 1);
    pieces[i].piece = pieces[i].pocket = {rectangle({40.0 + 10 * i, 0}, {45.0 + 10 * i, 27.78 - 1.4 + 0.1 * i})};
  }
  const std::vector<Finding> thin = reaching.found("thin-wall-at-edge", pieces);
  ASSERT_EQ(thin.size(), 1U);
  EXPECT_NEAR(thin[0].value, 1.2, 1e-9);
  EXPECT_NE(thin[0].feature.find("shell-03"), std::string::npos);
  EXPECT_NE(thin[0].message.find("worst of 3 pieces"), std::string::npos);
}

// The pocket's floor is at 6.35 - 1.5, a slot's on the centre line at 6.35 - 1.95.
TEST(InlayFindings, MeasureTheWoodUnderAPocketAndASlotAcrossIt) {
  Reaching reaching(12 * inch, 1.5);
  reaching.board.limits["thin-under-pocket"] = 100;
  reaching.set({40, -4}, {50, 4});
  EXPECT_NEAR(reaching.found("thin-under-pocket").at(0).value, 4.85, 1e-9);
  reaching.set({60, -4}, {80, 4});
  EXPECT_NEAR(reaching.found("thin-under-pocket").at(0).value, 4.4, 0.03);  // the arc falls 0.026 in 4 mm
}

TEST(InlayFindings, MeasureTheWoodOverPinsAndChannel) {
  Reaching reaching(12 * inch, 1.5);
  reaching.set({40, -4}, {50, 4});
  reaching.board.limits["thin-over-channel"] = reaching.board.limits["thin-over-pin"] = 100;
  Neck neck;
  neck.channel_width = 6, neck.channel_from = 10, neck.channel_to = 60;
  reaching.board.neck = neck;
  reaching.board.slots.depth = 0.4;  // the slots are no lower than the pocket
  reaching.board.pins = Pins{};
  reaching.board.pins->at = {{45, 2}};
  reaching.board.pins->depth = 2.5;
  EXPECT_NEAR(reaching.found("thin-over-pin").at(0).value, 4.85 - 2.5, 1e-9);
  reaching.board.nut.depth = 0.4;
  EXPECT_NEAR(reaching.found("thin-over-channel").at(0).value, 4.85, 1e-9);
}

// 25 x 40 x 1.5 mm of a metal of 8,500 kg/m3 in place of wood.
TEST(InlayFindings, WeighThePieces) {
  Reaching reaching(1e6, 1.5);
  reaching.set({40, -20}, {65, 20});
  reaching.piece.material = "metal";
  reaching.board.materials["metal"].density = 8500;
  const Inlays inlays{{reaching.piece}, {}, {}};
  const Weights with = weights_of(with_inlays(reaching.board, inlays));
  const Weights without = weights_of(with_inlays(reaching.board, {}));
  const double ebony =
      without.blank /
      (drawn(reaching.board).layout.blank_thickness *
       area(rectangle(drawn(reaching.board).layout.blank.low, drawn(reaching.board).layout.blank.high)));
  EXPECT_NEAR(with.board - without.board, 25 * 40 * 1.5 * (8500e-6 - ebony), 0.01);
}

// A square of side a opened by r loses (4 - pi) r^2, and its corners stand off by r (sqrt 2 - 1); a clearing cutter of
// radius c leaves (4 - pi) (c^2 - r^2) of the pocket's corners to the other (closed forms). The pocket is 0.05 larger.
TEST(InlayFindings, SayWhatTheCuttersMakeOfADrawing) {
  Board board = good_board();
  let_in_square(board, 1.4);
  board.cutters.push_back(board.cutters[0]);
  board.cutters.back().use = {CutterUse::pocket_clear};
  board.cutters.back().diameter = 3;
  EXPECT_NEAR(measured(board, "drawing-simplified"), (4 - std::numbers::pi) * 0.7 * 0.7, 0.01);
  EXPECT_NEAR(measured(board, "corner-rounded"), 0.7 * (std::sqrt(2) - 1), 0.001);
  const auto left = [](double c) { return (4 - std::numbers::pi) * (c * c - 0.75 * 0.75); };
  EXPECT_NEAR(measured(board, "left-to-detail-cutter"), left(1.5), 0.01);
  board.cutters.push_back(board.cutters.back());
  board.cutters.back().diameter = 3.6;  // the smallest of the clearing cutters goes last
  EXPECT_NEAR(measured(board, "left-to-detail-cutter"), left(1.5), 0.01);
  board.cutters[board.cutters.size() - 2].measured_cut = 3.2;
  EXPECT_NEAR(measured(board, "left-to-detail-cutter"), left(1.6), 0.01);
}

TEST(SheetFindings, NameThePiecesWithoutASheet) {
  Reaching reaching(12 * inch, 1.5);
  reaching.piece.material = "bone";
  EXPECT_TRUE(reaching.found("no-room-on-sheet").empty());  // no sheet is given: nothing is said of sheets
  reaching.board.sheets = {{"shell", 100, 50, 2, Pattern::none}};
  const std::vector<Finding> none = reaching.found("no-room-on-sheet");
  ASSERT_EQ(none.size(), 1U);
  EXPECT_EQ(none[0].message, "there is no sheet of bone for shell-01");
}

}  // namespace
}  // namespace sagitta::test
