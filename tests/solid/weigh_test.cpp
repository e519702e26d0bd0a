// A reader that weighs by the kernel's default integrals, one fixed rule for each edge, finds what drawn boards and
// pieces hold: within 1e-4 of the plan's own volume. Drawn walls are cut where such a rule would go wrong
// (lift/FixedRule.hpp).

#include <gtest/gtest.h>

#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "lift/ConnectedComponents.hpp"
#include "plan/PiecePlan.hpp"
#include "plan/WoodVolume.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

constexpr double agreement = 1e-4;

double weighed(const Shell& shell) {
  double sum = 0;
  for (const Shell& part : connected_components(shell)) {
    GProp_GProps found;
    BRepGProp::VolumeProperties(make_solid(part), found);
    sum += found.Mass();
  }
  return sum;
}

class DefaultReader : public testing::TestWithParam<const char*> {};

TEST_P(DefaultReader, WeighsDrawnBoardsAndPiecesRight) {
  const Board board = read_board(places::tests() + "/../presets/" + GetParam() + ".toml").board;
  const Layout layout = std::get<Layout>(lay_out(board));
  const Surface surface = surface_of(board, layout);
  const Inlays inlays = std::get<Inlays>(fit_inlays(board, layout));
  const auto judge = [](Plan plan, const std::string& what) {
    if (!has_wood(plan)) return;
    const double planned = wood_volume(plan);
    EXPECT_NEAR(weighed(lift(std::move(plan))) / planned, 1, agreement) << what;
  };
  for (const Stage stage : stages_of(board))
    judge(std::get<Plan>(make_plan(board, layout, surface, inlays, stage)), std::string(name(stage)));
  for (const InlayPiece& piece : inlays.pieces)
    for (const PieceState state : {PieceState::sheet, PieceState::job})
      judge(std::get<Plan>(make_piece_plan(board, layout, surface, piece, state)), piece.name);
}

INSTANTIATE_TEST_SUITE_P(Drawn, DefaultReader, testing::Values("egret-figure", "wave-border", "numerals"));

}  // namespace
}  // namespace sagitta
