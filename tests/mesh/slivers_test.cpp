// Slivers thinner than the facets' own deviation: where a round piece reaches a little past a slot, a crumb of it
// stands between its own arc and the slot's wall, which share both ends. The crumb's volume is the circular segment's
// area, r^2 (a - sin a) / 2 with r cos(a / 2) the way from the centre to the wall, times its height (closed form).

#include <gtest/gtest.h>

#include "board/BoardFile.hpp"
#include "inlay/SampleDrawings.hpp"
#include "lift/ConnectedComponents.hpp"
#include "mesh/Mesh.hpp"
#include "mesh/MeshCheck.hpp"
#include "plan/PiecePlan.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

constexpr double wall = 200 + 0.25;  // far side of the octave's slot, which lies at half the scale

/// A drawn disc of radius 4 at fret 1 whose piece reaches past the far wall of slot 1 by so much. Flat, so that a crumb
/// is of one height; turned, so that its two half circles do not meet in the crumb.
Board board_with_disc(double past) {
  const std::string text =
      "format = 1\n[scale]\nlength = 400\nfrets = 4\ncents = [1200, 2400, 3600, 4800]\n"
      "[strings]\ncount = 4\nnut_spread = 50\nsaddle_spread = 50\n"
      "[board]\nthickness = 6.5\nedge_margin = 3\nbehind_nut = 8\npast_last_fret = 9\n"
      "[surface]\nprofile = \"flat\"\n[slots]\nwidth = 0.5\ndepth = 2\n"
      "[[inlays]]\nshape = \"artwork\"\nfile = \"drawn\"\nfrets = [1]\nalong = 8\nturn = 30\ndepth = 1.5\n"
      "[[cutters]]\nuse = [\"pocket-detail\", \"piece\"]\ndiameter = 0.8\n";
  Board board = read_board_text(text, "board.toml", ".").board;
  const double middle = std::get<Layout>(lay_out(board)).markers.at(0).centre.x;
  board.inlays[0].shift_along = wall + past - 4 - middle;
  return board;
}

TEST(Slivers, ACrumbThinnerThanTheFacetsIsAClosedMesh) {
  const Artwork disc = test::drawing({{"#202020", {test::disc({0, 0}, 4)}}});
  for (const double past : {0.0003, 0.002, 0.004, 0.03}) {
    const Board board = board_with_disc(past);
    const Layout layout = std::get<Layout>(lay_out(board));
    const Inlays inlays = std::get<Inlays>(fit_inlays(board, layout, {{"drawn", disc}}));
    const Plan plan =
        std::get<Plan>(make_piece_plan(board, layout, surface_of(board, layout), inlays.pieces.at(0), PieceState::job));
    const std::vector<Shell> parts = connected_components(lift(plan));
    ASSERT_EQ(parts.size(), 2U) << past;
    double least = 1e300;
    for (const Shell& part : parts)
      for (const double deviation : {0.001, default_deviation, 0.05}) {
        const Mesh mesh = make_mesh(part, deviation);
        EXPECT_EQ(unsound(mesh, genus(part)), "") << past;
        EXPECT_LE(mesh.deviation, deviation);
        least = std::min(least, mass_properties(make_solid(part)).volume);
        EXPECT_NEAR(volume(mesh), mass_properties(make_solid(part)).volume, volume_allowance(mesh, part)) << past;
      }
    const CurveSegment& arc = inlays.pieces[0].piece.at(0).at(0);
    const double angle = 2 * std::acos((wall - arc.centre.x) / arc.radius);
    EXPECT_NEAR(least / (arc.radius * arc.radius * (angle - std::sin(angle)) / 2 * 1.5), 1, 1e-4) << past;
  }
}

}  // namespace
}  // namespace sagitta
