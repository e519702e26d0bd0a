// The depth of artwork's pieces under the radius.

#include "GoodBoard.hpp"
#include "findings/ArtworkFindings.hpp"
#include "findings/PieceDepth.hpp"

namespace sagitta::test {
namespace {

/// A piece 4 mm long that reaches out to y = 22, on the good board with another radius.
struct Reaching {
  Board board = good_board();
  Layout layout;
  Surface surface;
  InlayPiece piece;

  Reaching(double radius, double depth) {
    board.surface.radius_at_nut = radius;
    board.inlays[0].shape = InlayShape::artwork;
    board.inlays[0].depth = depth;
    layout = std::get<Layout>(lay_out(board));
    surface = surface_of(board, layout);
    piece.name = "shell-01";
    piece.depth = depth;
    piece.fret = 3;
    piece.thickness = depth + 0.2;
    piece.piece = {rectangle({100, -4}, {104, 22})};
  }
  PieceDepth depth() const { return *piece_depth(board, layout, surface, piece); }
  std::vector<Finding> findings() const { return artwork_findings(board, layout, surface, {{piece}, {}, {}}); }
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

TEST(PieceDepth, LooksOnlyWhereTheBoardIs) {
  Reaching reaching(12 * inch, 1.5);
  reaching.piece.piece = {rectangle({100, 30}, {104, 34})};
  EXPECT_FALSE(piece_depth(reaching.board, reaching.layout, reaching.surface, reaching.piece).has_value());
}

TEST(ArtworkFindings, StopWhereThePieceIsSandedThrough) {
  const std::vector<Finding> found = Reaching(7.25 * inch, 1.27).findings();
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].name, "inlay-sanded-through");
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NEAR(found[0].value, -0.05, 0.005);
  EXPECT_NEAR(found[0].at[1], 22, 1e-9);
  EXPECT_TRUE(Reaching(12 * inch, 1.524).findings().empty());
}

TEST(ArtworkFindings, LookWhereThePieceIsTooLow) {
  Reaching reaching(12 * inch, 1.5);
  reaching.piece.thickness = 1.4;
  const std::vector<Finding> found = reaching.findings();
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].name, "pocket-too-deep");
  EXPECT_NEAR(found[0].value, -0.1, 1e-9);
}

}  // namespace
}  // namespace sagitta::test
