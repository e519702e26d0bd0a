// Pieces of inlay as solids. Volumes: area by closed form times height; under the radius by the midpoint rule over the
// piece, with the height of a circular arc; each sound by the kernel's own check.

#include <gtest/gtest.h>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "inlay/ArcSplineFit.hpp"
#include "inlay/SampleDrawings.hpp"
#include "lift/ConnectedComponents.hpp"
#include "mesh/MeshCheck.hpp"
#include "plan/PiecePlan.hpp"
#include "solid/Solid.hpp"
#include "solid/StepCopy.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double cutter_radius = 0.4;

struct Inlaid {
  Board board;
  Layout layout;
  Surface surface;
  Inlays inlays;
};

Inlaid inlaid(Inlay inlay, const Artwork& artwork = {}) {
  Inlaid made;
  made.board = read_board(places::tests() + "/bench/standard.toml").board;
  made.board.inlays.clear();
  made.board.cutters.clear();
  made.board.surface = {};
  made.board.surface.profile = Profile::single;
  made.board.surface.radius_at_nut = 254;
  Cutter& cutter = made.board.cutters.emplace_back();
  cutter.use = {CutterUse::pocket_detail, CutterUse::piece};
  cutter.diameter = 2 * cutter_radius;
  if (inlay.shape == InlayShape::artwork) inlay.file = "drawn";
  made.board.inlays.push_back(inlay);
  made.layout = std::get<Layout>(lay_out(made.board));
  made.surface = surface_of(made.board, made.layout);
  made.inlays = std::get<Inlays>(fit_inlays(made.board, made.layout, {{"drawn", artwork}}));
  return made;
}

Inlay inlay_of(InlayShape shape, std::vector<int> frets) {
  Inlay inlay;
  inlay.shape = shape;
  inlay.frets = std::move(frets);
  inlay.depth = 1.5;
  return inlay;
}

Plan plan_of_first(const Inlaid& made, PieceState state) {
  return std::get<Plan>(make_piece_plan(made.board, made.layout, made.surface, made.inlays.pieces.at(0), state));
}

/// Volume of the first piece, all its bodies together, each of them checked.
double volume_of(const Inlaid& made, PieceState state, std::size_t bodies = 1) {
  const Shell shell = lift(plan_of_first(made, state));
  EXPECT_EQ(unsound(shell), "");
  const std::vector<Shell> parts = connected_components(shell);
  EXPECT_EQ(parts.size(), bodies);
  double sum = 0;
  for (const Shell& part : parts) {
    const TopoDS_Solid solid = make_solid(part);
    EXPECT_EQ(unsound(solid, genus(part)), "");
    const StepCopy copy = through_step(solid, "piece");
    EXPECT_EQ(copy.trouble, "");
    EXPECT_EQ(unsound(copy.solid, genus(part)), "");
    sum += mass_properties(solid).volume;
  }
  const Mesh mesh = make_mesh(shell);
  EXPECT_NEAR(volume(mesh), sum, volume_allowance(mesh, shell));
  return sum;
}

double floor_of(const Inlaid& made) { return made.board.board.thickness - made.board.inlays[0].depth; }

/// Height of the playing surface over the glue face at y: a circular arc of the board's radius.
double arc_height(const Inlaid& made, double y) {
  const double r = *made.board.surface.radius_at_nut;
  return made.board.board.thickness + made.board.sanding - (r - std::sqrt(r * r - y * y));
}

TEST(PieceSolid, ABlockIsItsAreaTimesItsThickness) {
  Inlay block = inlay_of(InlayShape::block, {7});
  block.along = 9;
  block.across = 14;
  block.piece_thickness = 1.6;
  const Inlaid made = inlaid(block);
  const double area = 9 * 14 - (4 - pi) * cutter_radius * cutter_radius;
  EXPECT_NEAR(volume_of(made, PieceState::sheet), area * 1.6, 1e-6);
  EXPECT_NEAR(volume_of(made, PieceState::inlaid), area * 1.6, 1e-6);
}

TEST(PieceSolid, InTheBlankItEndsAtTheBlanksTop) {
  Inlay dot = inlay_of(InlayShape::dot, {7});
  dot.piece_thickness = 5;
  const Inlaid made = inlaid(dot);
  const double area = pi * 9;
  EXPECT_NEAR(volume_of(made, PieceState::sheet), area * 5, 1e-6);
  const double height = made.layout.blank_thickness - floor_of(made);
  ASSERT_LT(height, 5);
  EXPECT_NEAR(volume_of(made, PieceState::inlaid), area * height, 1e-6);
}

TEST(PieceSolid, InTheBoardTheRadiusCutsIt) {
  Inlay dot = inlay_of(InlayShape::dot, {7});
  dot.piece_thickness = 2;
  dot.shift_across = 15;
  const Inlaid made = inlaid(dot);
  const double side = made.inlays.pieces[0].shape->core[0].y;
  double sum = 0;
  constexpr int strips = 200000;
  for (int i = 0; i < strips; ++i) {  // strips of the disc along the board
    const double v = 3 * (2 * (i + 0.5) / strips - 1);
    sum += 2 * std::sqrt(9 - v * v) * (6.0 / strips) * (arc_height(made, side + v) - floor_of(made));
  }
  ASSERT_LT(sum, pi * 9 * 1.5);
  EXPECT_NEAR(volume_of(made, PieceState::job), sum, 1e-4);
}

TEST(PieceSolid, ASlotCutsItInTwo) {
  Inlay drawn = inlay_of(InlayShape::artwork, {7});
  drawn.along = 50;
  drawn.piece_thickness = 1.8;
  Inlaid made = inlaid(drawn, test::drawing({{"#202020", {test::box({-25, -4}, {25, 4})}}}));
  const double height = volume_of(made, PieceState::sheet) / 1.8;
  EXPECT_NEAR(height, 50 * 8 - (4 - pi) * cutter_radius * cutter_radius, 0.02);  // refitted within 0.0012 mm
  std::size_t slots = 0;
  const Box box = bounds(made.inlays.pieces[0].piece);
  for (const Slot& slot : made.layout.slots) slots += slot.bass_end.x > box.low.x && slot.bass_end.x < box.high.x;
  ASSERT_GT(slots, 0U);
  ASSERT_GT(slot_depth(made.board), 1.5);
  const double whole = volume_of(made, PieceState::job, slots + 1);
  double strip = 0, uncut = 0;
  constexpr int steps = 20000;
  for (int i = 0; i < steps; ++i) {
    const double y = 4 * (2 * (i + 0.5) / steps - 1), h = arc_height(made, y) - floor_of(made);
    strip += static_cast<double>(slots) * made.layout.slots[0].width * (8.0 / steps) * h;
    uncut += 50 * (8.0 / steps) * h;
  }
  uncut -= (4 - pi) * cutter_radius * cutter_radius * (arc_height(made, 4) - floor_of(made));
  EXPECT_NEAR(whole, uncut - strip, 0.05);
}

TEST(PieceSolid, NothingIsLeftOfAPieceBeyondTheEdge) {
  Inlay dot = inlay_of(InlayShape::dot, {7});
  dot.diameter = 2;
  dot.shift_across = 33;
  EXPECT_FALSE(has_wood(plan_of_first(inlaid(dot), PieceState::job)));
}

TEST(PieceSolid, TheLeftHandsPieceIsTheMirrorOfTheRights) {
  Inlay drawn = inlay_of(InlayShape::artwork, {7});
  drawn.along = 12;
  drawn.shift_across = 9;
  drawn.turn_degrees = 25;
  const Artwork hook =
      test::drawing({{"#202020", {test::polygon({{0, 0}, {12, 0}, {12, 3}, {3, 3}, {3, 9}, {0, 9}})}}});
  const Inlaid right = inlaid(drawn, hook);
  Board board = right.board;
  board.hand = Hand::left;
  const Layout layout = std::get<Layout>(lay_out(board));
  const Inlays left = std::get<Inlays>(fit_inlays(board, layout, {{"drawn", hook}}));
  ASSERT_EQ(left.pieces.size(), right.inlays.pieces.size());
  const Loops &a = right.inlays.pieces[0].piece, &b = left.pieces[0].piece;
  EXPECT_NEAR(area(a), area(b), 1e-9);
  const Box p = bounds(a), q = bounds(b);
  EXPECT_NEAR(p.low.x, q.low.x, 1e-9);
  EXPECT_NEAR(p.high.x, q.high.x, 1e-9);
  EXPECT_NEAR(p.low.y, -q.high.y, 1e-9);
  EXPECT_NEAR(p.high.y, -q.low.y, 1e-9);
}

}  // namespace
}  // namespace sagitta
