// Pockets of artwork as solids: sound at every stage, and the wood taken from the flat blank is the pockets' area by
// the polygon formula times their depth.

#include <gtest/gtest.h>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "inlay/ArcSplineFit.hpp"
#include "inlay/SampleDrawings.hpp"
#include "lift/Shell.hpp"
#include "mesh/MeshCheck.hpp"
#include "solid/Solid.hpp"
#include "solid/StepCopy.hpp"

namespace sagitta {
namespace {

struct Ready {
  Board board;
  Layout layout;
  Surface surface;
  Inlays inlays;
};

Ready ready(Inlay inlay, const Artwork& artwork) {
  Ready made;
  made.board = read_board(places::tests() + "/bench/standard.toml").board;
  made.board.inlays.clear();
  made.board.side_dots.reset();
  made.board.cutters.clear();
  Cutter& cutter = made.board.cutters.emplace_back();
  cutter.use = {CutterUse::pocket_detail, CutterUse::piece};
  cutter.diameter = 0.8;
  inlay.shape = InlayShape::artwork;
  inlay.file = "drawn";
  made.board.inlays.push_back(inlay);
  made.layout = std::get<Layout>(lay_out(made.board));
  made.surface = surface_of(made.board, made.layout);
  auto inlays = fit_inlays(made.board, made.layout, {{"drawn", artwork}});
  if (auto* faults = std::get_if<Faults>(&inlays)) throw std::runtime_error(faults->front().message);
  made.inlays = std::get<Inlays>(inlays);
  return made;
}

Inlay inlay_at(std::vector<int> frets, double along) {
  Inlay inlay;
  inlay.frets = std::move(frets);
  inlay.along = along;
  inlay.depth = 1.5;
  return inlay;
}

Shell shell_at(const Ready& made, Stage stage) {
  return lift(std::get<Plan>(make_plan(made.board, made.layout, made.surface, made.inlays, stage)));
}

double pocketed(const Ready& made) {
  double sum = 0;
  for (const Pocket& pocket : made.inlays.pockets) sum += area(pocket.outlines);
  return sum;
}

/// Every stage is sound, and the pockets take area times depth out of the flat blank.
void expect_sound(const Ready& made) {
  const double over = made.layout.blank_thickness - made.board.board.thickness;
  const double blank = mass_properties(make_solid(shell_at(made, Stage::blank))).volume;
  for (const Stage stage : stages_of(made.board)) {
    const Shell shell = shell_at(made, stage);
    EXPECT_EQ(unsound(shell), "") << name(stage);
    const TopoDS_Solid solid = make_solid(shell);
    EXPECT_EQ(unsound(solid, genus(shell)), "") << name(stage);
    const double v = mass_properties(solid).volume;
    EXPECT_EQ(unsound(make_mesh(shell), genus(shell)), "") << name(stage);
    EXPECT_NEAR(volume(make_mesh(shell)), v, volume_allowance(make_mesh(shell), shell)) << name(stage);
    if (stage == Stage::pocketed) {
      EXPECT_NEAR(blank - v, pocketed(made) * (made.board.inlays[0].depth + over), 1e-6 * blank);
    }
    if (stage != Stage::board) continue;
    const StepCopy copy = through_step(solid, "artwork-" + std::string(name(stage)));
    EXPECT_EQ(copy.trouble, "");
    EXPECT_EQ(unsound(copy.solid, genus(shell)), "") << name(stage);
  }
}

TEST(ArtworkSolid, RingWithAnIsland) {
  using namespace test;
  expect_sound(ready(inlay_at({3, 7}, 18), drawing({{"#202020", {disc({0, 0}, 9), reversed(disc({0, 0}, 6))}},
                                                    {"#202020", {disc({0, 0}, 3)}}})));
}

TEST(ArtworkSolid, AcrossSlotsAndOverTheEdge) {
  using namespace test;
  Inlay inlay = inlay_at({5}, 60);
  inlay.turn_degrees = 20;
  expect_sound(ready(inlay, drawing({{"#202020", {wave({0, 0}, 40, 20, 3, 1)}}})));
}

TEST(ArtworkSolid, TouchingRegionsInTwoMaterials) {
  using namespace test;
  Inlay inlay = inlay_at({5, 9}, 16);
  inlay.colours = {{"#202020", "bone"}, {"#808080", "shell"}};
  const Artwork artwork =
      drawing({{"#202020", {disc({0, 0}, 5)}}, {"#808080", {box({-10, -10}, {10, 10}), reversed(disc({0, 0}, 5))}}});
  const Ready made = ready(inlay, artwork);
  EXPECT_EQ(made.inlays.pieces.size(), 4u);
  EXPECT_EQ(made.inlays.pieces[0].name, "bone-01");
  EXPECT_EQ(made.inlays.pieces[3].name, "shell-02");
  expect_sound(made);
}

}  // namespace
}  // namespace sagitta
