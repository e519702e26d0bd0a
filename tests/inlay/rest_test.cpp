// Opening and closing are both at rest: a cutter of the radius that was named reaches all round every piece and into
// every pocket. Opening and closing are Minkowski's; a set that both leave alone is one that a disc rolls round on both
// sides (Serra 1982, "Image Analysis and Mathematical Morphology", chapter V).

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <numeric>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "inlay/Narrowest.hpp"
#include "inlay/RandomDrawing.hpp"
#include "inlay/Reached.hpp"
#include "layout/Layout.hpp"
#include "polygon/OutlineIndex.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;
using namespace test;

/// All 1,000 random drawings are looked at when SAGITTA_ALL_DRAWINGS is set; 100 of them always, and two that once were
/// not at rest: a chain of arcs that needs making again more than once, and a pocket that the cutter just enters.
std::vector<unsigned> drawings() {
  std::vector<unsigned> seeds(std::getenv("SAGITTA_ALL_DRAWINGS") ? 1000 : 100);
  std::iota(seeds.begin(), seeds.end(), 1U);
  if (seeds.size() < 1000) seeds.insert(seeds.end(), {459, 950});
  return seeds;
}

TEST(Rest, HoldsOnRandomDrawings) {
  Unreached worst;
  for (const unsigned seed : drawings()) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const double r = 0.2 + 0.1 * (seed % 5), clearance = 0.02 + 0.01 * (seed % 5);
    const auto made = fit_figure(random_drawing(seed), {1, r, clearance, 0}, {});
    const auto* figure = std::get_if<FittedFigure>(&made);
    if (!figure) continue;  // nothing is left of a small drawing
    const Unreached own = unreached(*figure, r, clearance);
    EXPECT_LT(own.most(), tolerance::at_rest);
    add(own, worst);
  }
  RecordProperty("worst_piece_um2", static_cast<int>(1e6 * std::max(worst.piece_opened, worst.piece_closed)));
  RecordProperty("worst_pocket_um2", static_cast<int>(1e6 * std::max(worst.pocket_opened, worst.pocket_closed)));
}

TEST(Rest, HoldsOnAllPresets) {
  int seen = 0;
  for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(places::tests()) / "../presets")) {
    if (entry.path().extension() != ".toml") continue;
    const Board board = read_board(entry.path().string()).board;
    const auto laid = lay_out(board);
    const Inlays inlays = std::get<Inlays>(fit_inlays(board, std::get<Layout>(laid)));
    const double r = inlay_cutter_radius(board);
    for (const InlayPiece& piece : inlays.pieces) {
      if (piece.shape) continue;
      ++seen;
      const double clearance = board.inlays[static_cast<std::size_t>(piece.inlay)].clearance;
      EXPECT_LT(unreached(piece.piece, piece.pocket, r, clearance).most(), tolerance::at_rest)
          << entry.path() << " " << piece.name;
    }
  }
  EXPECT_GT(seen, 20);
}

/// Two discs of 10 mm on the arms of a fork, so far apart: one island.
Artwork two_discs(double gap) {
  const double second = 15 + gap;
  Region fork{
      {{3, 10}, {7, 10}, {7, 23}, {second - 2, 23}, {second - 2, 10}, {second + 2, 10}, {second + 2, 27}, {3, 27}}};
  const Region discs = flattened({disc({5, 7}, 5), disc({second, 7}, 5)}, 1, {0, 0});
  DrawnRegion region{"#101010", {}};
  for (const Polygon& outline : union_of(filled(fork), discs)) region.outlines.push_back(polygon(outline));
  return {{region}, {}};
}

// Closing two discs by r makes a neck 2 (sqrt((R + r)^2 - (R + g/2)^2) - r) thick between them: opening takes it away
// where that is less than 2 r. Whatever is done about it, the cutter passes the gap, or there is none.
TEST(Rest, ComesToRestBetweenTwoDiscs) {
  constexpr double r = 0.8, clearance = 0.05, radius = 5;
  for (int step = 0; step <= 30; ++step) {
    const double gap = (0.5 + 0.05 * step) * 2 * r;
    SCOPED_TRACE("a gap of " + std::to_string(gap));
    const auto made = fit_figure(two_discs(gap), {1, r, clearance, 0}, {});
    ASSERT_TRUE(std::holds_alternative<FittedFigure>(made));
    const FittedFigure& figure = std::get<FittedFigure>(made);
    ASSERT_EQ(figure.parts.size(), 1U);
    EXPECT_LT(unreached(figure, r, clearance).most(), tolerance::at_rest);
    const Region piece = flattened(figure.parts[0].piece);
    const double width = narrowest(piece, false, 2 * r - tolerance::gap).width;
    EXPECT_GT(width, 1e299) << width;
    const double half_neck = std::sqrt(std::pow(radius + r, 2) - std::pow(radius + gap / 2, 2)) - r;
    const bool trap = gap < 2 * r && half_neck < r;
    if (gap >= 2 * r + tolerance::gap) {
      // The fork's two outer corners lose (1 - pi / 4) r^2 each; outlines of 105 mm are within a third of a micron.
      EXPECT_NEAR(figure.figures[0].lost_area, 2 * (1 - pi / 4) * r * r, 105 * 0.0003);
    } else if (!trap && gap < 2 * r - tolerance::gap) {
      EXPECT_EQ(figure.parts[0].piece.size(), 2U) << "the gap is closed";
    }
  }
}

TEST(Rest, TellsTheNarrowestDrawnGap) {
  for (const double gap : {0.9, 1.2, 1.4, 1.59}) {
    const auto made = fit_figure(two_discs(gap), {1, 0.8, 0.05, 0}, {});
    const RegionFigures& figures = std::get<FittedFigure>(made).figures[0];
    ASSERT_TRUE(figures.drawn_gap) << gap;
    EXPECT_NEAR(*figures.drawn_gap, gap, tolerance::fitted);
    EXPECT_NEAR(figures.drawn_gap_at.x, 0, 0.01);  // the drawing's middle
  }
  EXPECT_FALSE(std::get<FittedFigure>(fit_figure(two_discs(1.61), {1, 0.8, 0.05, 0}, {})).figures[0].drawn_gap);
}

/// The shortest way between any two pieces of a figure.
double nearest_pieces(const FittedFigure& figure) {
  double least = 1e300;
  for (std::size_t i = 0; i < figure.parts.size(); ++i) {
    const OutlineIndex own(flattened(figure.parts[i].piece, 0.0001));
    for (std::size_t k = 0; k < figure.parts.size(); ++k)
      if (i != k)
        for (const Polygon& polygon : flattened(figure.parts[k].piece, 0.0001))
          for (const Point p : polygon) least = std::min(least, own.nearest(p).distance);
  }
  return least;
}

// Islands of one colour, drawn so far apart: each is a piece of its own and keeps the clearance.
TEST(Rest, KeepsTheClearanceBetweenIslandsOfOneMaterial) {
  for (const double clearance : {0.02, 0.05, 0.15})
    for (const double apart : {0.0, 0.0025, 0.02, 0.057, 0.14, 0.3, 0.5}) {
      const Artwork drawn =
          drawing({{"#101010", {disc({0, 0}, 3), disc({6 + apart, 0}, 3), box({-2, 3 + apart}, {2, 8})}}});
      const auto made = fit_figure(drawn, {1, 0.3, clearance, 0}, {});
      const FittedFigure& figure = std::get<FittedFigure>(made);
      EXPECT_EQ(figure.parts.size(), 3U);
      EXPECT_NEAR(nearest_pieces(figure), std::max(clearance, apart), tolerance::gap) << clearance << " " << apart;
      EXPECT_LT(unreached(figure, 0.3, clearance).most(), tolerance::at_rest);
      // Pockets between which less wood than the clearance would be left are one.
      EXPECT_EQ(figure.pockets.size(), std::max(clearance, apart) < 3 * clearance ? 1U : 3U)
          << clearance << " " << apart;
      EXPECT_EQ(figure.meetings.size(), std::max(clearance, apart) < 3 * clearance ? 2U : 0U);
    }
}

TEST(Rest, KeepsTheClearanceOnRandomDrawings) {
  for (const unsigned seed : drawings()) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const double clearance = seed % 3 == 0 ? 0.02 : seed % 3 == 1 ? 0.05 : 0.15;
    const auto made = fit_figure(random_drawing(seed), {1, 0.2 + 0.1 * (seed % 5), clearance, 0}, {});
    const auto* figure = std::get_if<FittedFigure>(&made);
    if (!figure || figure->parts.size() < 2) continue;
    EXPECT_GT(nearest_pieces(*figure), clearance - tolerance::gap);
  }
}

}  // namespace
}  // namespace sagitta
