// A preset with ovals for its dots: as few faces, and pockets of the volume that Steiner's formula gives.

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "inlay/Inlays.hpp"
#include "lift/Shell.hpp"
#include "plan/PiecePlan.hpp"
#include "plan/WoodVolume.hpp"

namespace sagitta {
namespace {

struct Made {
  std::map<Stage, std::size_t> faces;
  std::map<Stage, double> volume;
  std::size_t piece_faces = 0;
};

Made made_with(const Board& board) {
  const Layout layout = std::get<Layout>(lay_out(board));
  const Surface surface = surface_of(board, layout);
  const Inlays inlays = std::get<Inlays>(fit_inlays(board, layout));
  Made made;
  for (const Stage stage : stages_of(board)) {
    Plan plan = std::get<Plan>(make_plan(board, layout, surface, inlays, stage));
    made.volume[stage] = wood_volume(plan);
    made.faces[stage] = lift(std::move(plan)).faces.size();
  }
  for (const InlayPiece& segment : inlays.pieces)
    made.piece_faces +=
        lift(std::get<Plan>(make_piece_plan(board, layout, surface, segment, PieceState::job))).faces.size();
  return made;
}

TEST(Ovals, HaveAsFewFacesAsDotsAndTheirPocketsVolume) {
  Board board = read_board(places::source() + "/presets/heron-six.toml").board;
  const Made dots = made_with(board);
  Inlay& inlay = board.inlays[0];
  inlay.shape = InlayShape::oval;
  inlay.along = 6, inlay.across = 9;
  const Made ovals = made_with(board);
  for (const auto& [stage, faces] : ovals.faces)
    EXPECT_LE(static_cast<double>(faces), 1.3 * static_cast<double>(dots.faces.at(stage)));
  EXPECT_LE(static_cast<double>(ovals.piece_faces), 1.3 * static_cast<double>(dots.piece_faces));
  // Ten pockets, as deep below the finished top as the board says, in a blank that stands higher.
  constexpr double a = 4.5, b = 3, d = 0.05, pi = std::numbers::pi;
  const double round = 4 * a * std::comp_ellint_2(std::sqrt(1 - b * b / (a * a)));
  const double covered = pi * a * b + round * d + pi * d * d;
  const double deep = inlay.depth + std::get<Layout>(lay_out(board)).blank_thickness - board.board.thickness;
  const double taken = ovals.volume.at(Stage::blank) - ovals.volume.at(Stage::pocketed);
  EXPECT_NEAR(taken, 10 * covered * deep, 10 * 0.0005 * round * deep);
}

}  // namespace
}  // namespace sagitta
