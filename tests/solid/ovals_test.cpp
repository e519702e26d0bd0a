// Oval inlays as solids. A piece is an exact ellipse: its edges and its wall say so, and it holds pi a b times its
// thickness (any handbook of mathematics). Boards and pieces are sound at every stage, and again after their STEP file
// is read.

#include <gtest/gtest.h>

#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <GProp_GProps.hxx>
#include <Geom_Ellipse.hxx>
#include <Geom_SurfaceOfLinearExtrusion.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <random>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "lift/ConnectedComponents.hpp"
#include "mesh/MeshCheck.hpp"
#include "plan/PiecePlan.hpp"
#include "plan/WoodVolume.hpp"
#include "solid/Solid.hpp"
#include "solid/StepCopy.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;

struct Ready {
  Board board;
  Layout layout;
  Surface surface;
  Inlays inlays;
};

Inlay oval(double along, double across, int fret, double turn = 0) {
  Inlay inlay;
  inlay.shape = InlayShape::oval;
  inlay.along = along, inlay.across = across, inlay.turn_degrees = turn;
  inlay.frets = {fret};
  inlay.depth = 1.5;
  return inlay;
}

Ready ready(std::vector<Inlay> inlays, Hand hand = Hand::right) {
  Ready made;
  made.board = read_board(places::source() + "/presets/heron-six.toml").board;  // compound radius, slots, binding none
  made.board.hand = hand;
  made.board.inlays = std::move(inlays);
  made.layout = std::get<Layout>(lay_out(made.board));
  made.surface = surface_of(made.board, made.layout);
  made.inlays = std::get<Inlays>(fit_inlays(made.board, made.layout));
  return made;
}

Shell piece_shell(const Ready& made, std::size_t piece, PieceState state) {
  return lift(
      std::get<Plan>(make_piece_plan(made.board, made.layout, made.surface, made.inlays.pieces.at(piece), state)));
}

struct Curves {
  int ellipses = 0, extruded = 0, faces = 0;
  std::vector<std::array<double, 2>> half_axes;
};

Curves curves_of(const TopoDS_Shape& shape) {
  Curves found;
  TopTools_IndexedMapOfShape edges, faces;
  TopExp::MapShapes(shape, TopAbs_EDGE, edges);
  TopExp::MapShapes(shape, TopAbs_FACE, faces);
  for (int i = 1; i <= edges.Extent(); ++i) {
    double first = 0, last = 0;
    const auto curve = Handle(Geom_Ellipse)::DownCast(BRep_Tool::Curve(TopoDS::Edge(edges(i)), first, last));
    if (curve.IsNull()) continue;
    ++found.ellipses;
    found.half_axes.push_back({curve->MajorRadius(), curve->MinorRadius()});
  }
  found.faces = faces.Extent();
  for (int i = 1; i <= faces.Extent(); ++i) {
    const auto wall = Handle(Geom_SurfaceOfLinearExtrusion)::DownCast(BRep_Tool::Surface(TopoDS::Face(faces(i))));
    if (!wall.IsNull() && !Handle(Geom_Ellipse)::DownCast(wall->BasisCurve()).IsNull()) ++found.extruded;
  }
  return found;
}

void expect_ellipses(const TopoDS_Shape& shape, double a, double b) {
  const Curves found = curves_of(shape);
  EXPECT_EQ(found.faces, 4);  // as a dot's piece: top, bottom and two halves of the wall
  EXPECT_EQ(found.extruded, 2);
  EXPECT_EQ(found.ellipses, 4);
  for (const auto& [major, minor] : found.half_axes) {
    EXPECT_NEAR(major, a, 1e-9);
    EXPECT_NEAR(minor, b, 1e-9);
  }
}

double weighed(const TopoDS_Shape& solid) {
  GProp_GProps found;
  BRepGProp::VolumeProperties(solid, found);
  return found.Mass();
}

TEST(OvalSolid, PieceIsAnExactEllipseBeforeAndAfterStep) {
  for (const Hand hand : {Hand::right, Hand::left})
    for (const auto& [along, across, turn] : {std::array{6.0, 9.0, 0.0}, {14.0, 5.0, 30.0}, {9.0, 8.99, 75.0}}) {
      const Ready made = ready({oval(along, across, 5, turn)}, hand);
      for (const PieceState state : {PieceState::sheet, PieceState::inlaid}) {
        const TopoDS_Solid solid = make_solid(piece_shell(made, 0, state));
        const double a = std::max(along, across) / 2, b = std::min(along, across) / 2;
        expect_ellipses(solid, a, b);
        const double volume = pi * a * b * made.inlays.pieces[0].thickness;
        EXPECT_NEAR(mass_properties(solid).volume, volume, 1e-9 * volume);
        EXPECT_NEAR(weighed(solid), volume, 1e-9 * volume);
        const StepCopy copy = through_step(solid, "oval");
        EXPECT_EQ(copy.trouble, "");
        expect_ellipses(copy.solid, a, b);
        EXPECT_NEAR(weighed(copy.solid), volume, 1e-9 * volume);
      }
    }
}

void expect_sound(const Shell& whole, const std::string& what) {
  EXPECT_EQ(unsound(whole), "") << what;
  const Mesh mesh = make_mesh(whole);
  EXPECT_EQ(unsound(mesh, genus(whole)), "") << what;
  EXPECT_NEAR(volume(mesh), wood_volume(whole.plan), volume_allowance(mesh, whole)) << what;
  double sum = 0;
  for (const Shell& shell : connected_components(whole)) {
    const TopoDS_Solid solid = make_solid(shell);
    EXPECT_EQ(unsound(solid, genus(shell)), "") << what;
    const StepCopy copy = through_step(solid, "oval");
    EXPECT_EQ(copy.trouble, "") << what;
    EXPECT_EQ(unsound(copy.solid, genus(shell)), "") << what;
    sum += mass_properties(solid).volume;
    EXPECT_NEAR(weighed(copy.solid), mass_properties(solid).volume, 1e-4 * mass_properties(solid).volume) << what;
  }
  // The plan has arcs within 0.000002 mm of the ellipse and of the curve beside it, on walls lower than 8 mm.
  double arcs = 0;
  for (const PlanFeature& feature : whole.plan.features)
    if (feature.ellipse) arcs += 0.000002 * feature.length * 8;
  EXPECT_NEAR(sum, wood_volume(whole.plan), 1e-7 * sum + arcs) << what;
}

/// Every stage of the board and of each piece.
void expect_all_sound(const Ready& made, const std::string& what) {
  for (const Stage stage : stages_of(made.board)) {
    auto plan = make_plan(made.board, made.layout, made.surface, made.inlays, stage);
    ASSERT_TRUE(std::holds_alternative<Plan>(plan)) << what << ": " << std::get<Faults>(plan).front().message;
    expect_sound(lift(std::get<Plan>(std::move(plan))), what + ", " + std::string(name(stage)));
  }
  for (std::size_t i = 0; i < made.inlays.pieces.size(); ++i)
    for (const PieceState state : {PieceState::sheet, PieceState::inlaid, PieceState::job}) {
      auto plan = make_piece_plan(made.board, made.layout, made.surface, made.inlays.pieces[i], state);
      ASSERT_TRUE(std::holds_alternative<Plan>(plan)) << what;
      if (!has_wood(std::get<Plan>(plan))) continue;
      expect_sound(lift(std::get<Plan>(std::move(plan))), what + ", " + made.inlays.pieces[i].name);
    }
}

TEST(OvalSolid, IsSoundInAnyPlaceAtEveryStage) {
  Inlay pairs = oval(6, 9, 5, 20);
  pairs.frets.clear(), pairs.double_frets = {5, 12};
  Inlay over_edge = oval(9, 16, 7, 40);
  over_edge.shift_across = 22;
  Inlay second = oval(8, 3, 9);
  second.material = "bone", second.shift_across = -9;
  expect_all_sound(ready({pairs}), "pairs, turned");
  expect_all_sound(ready({pairs}, Hand::left), "left-handed");
  expect_all_sound(ready({oval(60, 11, 3, 8)}), "across slots");
  expect_all_sound(ready({over_edge}), "over the edge");
  expect_all_sound(ready({oval(5, 5, 7)}), "a circle");
  expect_all_sound(ready({oval(7, 14, 9), second}), "two materials");
  expect_all_sound(ready({oval(6, 9, 5), oval(6, 9, 5)}), "twice in one place");
  Ready opened = ready({oval(20, 6, 3)});
  opened.board.cutters.resize(1);
  opened.board.cutters[0] = {};
  opened.board.cutters[0].use = {CutterUse::pocket_detail, CutterUse::piece};
  opened.board.cutters[0].diameter = 3;
  opened.inlays = std::get<Inlays>(fit_inlays(opened.board, opened.layout));
  ASSERT_FALSE(opened.inlays.pieces[0].ellipse);
  expect_all_sound(opened, "its ends taken by the cutter");
}

// What a slot leaves of an ellipse is still one: the wall of what is left of the piece has no other curve.
TEST(OvalSolid, StaysAnEllipseWhereASlotCutsIt) {
  const Ready made = ready({oval(40, 9, 3, 8)});
  int extruded = 0, ellipses = 0;
  for (const Shell& shell : connected_components(piece_shell(made, 0, PieceState::job))) {
    const Curves found = curves_of(make_solid(shell));
    extruded += found.extruded;
    ellipses += found.ellipses;
    for (const auto& [major, minor] : found.half_axes) {
      EXPECT_NEAR(major, 20, 1e-9);
      EXPECT_NEAR(minor, 4.5, 1e-9);
    }
  }
  EXPECT_GE(extruded, 2);
  EXPECT_GE(ellipses, 2);
}

TEST(OvalSolid, IsSoundInRandomPlaces) {
  const char* wanted = std::getenv("SAGITTA_OVALS");
  const int count = wanted ? std::atoi(wanted) : 6;
  for (int seed = 1; seed <= count; ++seed) {
    std::mt19937_64 random(static_cast<std::uint64_t>(seed));
    const auto within = [&](double low, double high) {
      return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
    };
    Inlay inlay = oval(within(1, 40), within(1, 40), 1 + static_cast<int>(within(0, 18)), within(-180, 180));
    inlay.shift_along = within(-20, 20), inlay.shift_across = within(-25, 25);
    inlay.depth = within(0.8, 2.5);
    expect_all_sound(ready({inlay}, seed % 2 ? Hand::right : Hand::left), "seed " + std::to_string(seed));
    if (HasFailure()) return;
  }
}

}  // namespace
}  // namespace sagitta
