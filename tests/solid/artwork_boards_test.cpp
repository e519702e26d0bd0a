// Random drawings let into boards of every kind, at every stage and as pieces: sound by the kernel's own check and by
// Euler's formula, closed as triangles, and of one volume by the kernel's integrals and by the facets.

#include <gtest/gtest.h>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "inlay/RandomDrawing.hpp"
#include "lift/ConnectedComponents.hpp"
#include "mesh/MeshCheck.hpp"
#include "plan/PiecePlan.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

constexpr const char* presets[] = {"sandpiper-fan",  "egret-classical", "curlew-seven-fan", "avocet-bound",
                                   "tern-inch-left", "plover-zero",     "dunlin-bass",      "godwit-nineteen"};

/// One of the presets, with a drawing in place of its inlays.
Board board_with_drawing(unsigned seed) {
  std::mt19937 dice(seed);
  const auto roll = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(dice()) / 4294967295.0;
  };
  Board board = read_board(places::tests() + "/../presets/" + presets[seed % std::size(presets)] + ".toml").board;
  board.inlays.clear();
  Inlay& inlay = board.inlays.emplace_back();
  inlay.shape = InlayShape::artwork;
  inlay.file = "drawn";
  inlay.frets = {1 + static_cast<int>(dice() % 15), 17};
  inlay.along = roll(8, 45);
  inlay.across = roll(-12, 12);
  inlay.turn_degrees = roll(-180, 180);
  inlay.depth = roll(0.8, 2.2);
  board.cutters.clear();
  Cutter& cutter = board.cutters.emplace_back();
  cutter.use = {CutterUse::pocket_detail, CutterUse::piece};
  cutter.diameter = 0.8;
  return board;
}

void expect_sound(const Shell& shell, const std::string& what) {
  SCOPED_TRACE(what);
  EXPECT_EQ(unsound(shell), "");
  const TopoDS_Solid solid = make_solid(shell);
  EXPECT_EQ(unsound(solid, genus(shell)), "");
  const Mesh mesh = make_mesh(shell);
  EXPECT_EQ(unsound(mesh, genus(shell)), "");
  EXPECT_NEAR(mass_properties(solid).volume, volume(mesh), volume_allowance(mesh, shell));
}

class RandomArtwork : public testing::TestWithParam<unsigned> {};

TEST_P(RandomArtwork, IsSoundAtEveryStageAndAsPieces) {
  const Board board = board_with_drawing(GetParam());
  const Layout layout = std::get<Layout>(lay_out(board));
  const Surface surface = surface_of(board, layout);
  const auto fitted = fit_inlays(board, layout, {{"drawn", test::random_drawing(GetParam())}});
  ASSERT_TRUE(std::holds_alternative<Inlays>(fitted)) << std::get<Faults>(fitted).front().message;
  const Inlays& inlays = std::get<Inlays>(fitted);
  for (const Stage stage : stages_of(board))
    expect_sound(lift(std::get<Plan>(make_plan(board, layout, surface, inlays, stage))), std::string(name(stage)));
  for (const InlayPiece& piece : inlays.pieces)
    for (const PieceState state : {PieceState::sheet, PieceState::job}) {
      const Plan plan = std::get<Plan>(make_piece_plan(board, layout, surface, piece, state));
      if (!has_wood(plan)) continue;  // the radius or the outline took it all
      for (const Shell& part : connected_components(lift(plan)))
        expect_sound(part, piece.name + (state == PieceState::sheet ? " on its sheet" : " in the board"));
    }
}

INSTANTIATE_TEST_SUITE_P(Seeded, RandomArtwork, testing::Range(1U, 17U));

}  // namespace
}  // namespace sagitta
