// Smooth walls: arcs that follow each other with one tangent, as one curve and one face. Lengths, places and curvatures
// against the arcs' own closed forms; the number of walls against the number of drawn segments.

#include <gtest/gtest.h>

#include <BRep_Tool.hxx>
#include <Geom_BSplineSurface.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "inlay/ArcSplineFit.hpp"
#include "inlay/Biarc.hpp"
#include "inlay/SampleDrawings.hpp"
#include "lift/ConnectedComponents.hpp"
#include "lift/Shell.hpp"
#include "mesh/MeshCheck.hpp"
#include "plan/PiecePlan.hpp"
#include "solid/CompositeCurve.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

/// An arc of signed radius from p in the given direction.
CurveSegment arc_on(Point p, Point way, double radius, double angle) {
  const Point centre = p + radius * left_of(way);
  const Point from = p - centre;
  return arc(centre, std::abs(radius), std::atan2(from.y, from.x), radius > 0 ? angle : -angle);
}

/// Arcs one after the other, each turned against the last by `kink`.
std::vector<CurveSegment> arcs_of(const std::vector<std::pair<double, double>>& radii_and_angles, double kink = 0) {
  std::vector<CurveSegment> run;
  Point p{3, -2}, way = unit({2, 1});
  for (const auto& [radius, angle] : radii_and_angles) {
    run.push_back(arc_on(p, way, radius, angle));
    p = run.back().b;
    way = turned(end_direction(run.back()), kink);
  }
  return run;
}

const std::vector<std::pair<double, double>> varied{{10, 0.3},   {7, 0.45},   {-4, 0.8},
                                                    {-90, 0.02}, {0.4, 0.95}, {55, 0.1}};

double off_arcs(const std::vector<CurveSegment>& run, Point p) {
  double nearest = 1e300;
  for (const CurveSegment& segment : run) {
    const double turn = std::abs(
        std::remainder(std::atan2(p.y - segment.centre.y, p.x - segment.centre.x) - segment.start - segment.sweep / 2,
                       2 * std::numbers::pi));
    if (turn <= std::abs(segment.sweep) / 2 + 1e-6)
      nearest = std::min(nearest, std::abs(distance(p, segment.centre) - segment.radius));
  }
  return nearest;
}

double most_off(const std::vector<CurveSegment>& run) {
  const CompositeCurve curve(run);
  double most = 0;
  for (std::size_t i = 0; i + 1 < curve.spans().size(); ++i)
    for (int k = 0; k <= 50; ++k) {
      const auto [x, y] = curve.at(std::lerp(curve.spans()[i], curve.spans()[i + 1], k / 50.0), i);
      most = std::max(most, off_arcs(run, {x.v, y.v}));
    }
  return most;
}

TEST(CompositeCurve, FollowsItsArcs) {
  const std::vector<CurveSegment> run = arcs_of(varied);
  const CompositeCurve curve(run);
  double length = 0;
  for (const auto& [radius, angle] : varied) length += std::abs(radius) * angle;
  EXPECT_NEAR(curve.spans().back(), length, 1e-12);
  EXPECT_LT(most_off(run), 1e-8);
}

TEST(CompositeCurve, HasTheArcsCurvatureAndOneTangent) {
  const std::vector<CurveSegment> run = arcs_of(varied);
  const CompositeCurve curve(run);
  std::size_t piece = 0;
  double ends = run[0].length();
  for (std::size_t i = 0; i + 1 < curve.spans().size(); ++i) {
    while (curve.spans()[i] > ends - 1e-9) ends += run[++piece].length();
    const double bend = (run[piece].sweep > 0 ? 1 : -1) / run[piece].radius;
    for (const double s : {curve.spans()[i], curve.spans()[i + 1]}) {
      const auto [x, y] = curve.at(s, i);
      EXPECT_NEAR(std::hypot(x.d, y.d), 1, 1e-12);
      EXPECT_NEAR(x.d * y.dd - y.d * x.dd, bend, 1e-9 * std::abs(bend)) << "at " << s;
    }
    if (i == 0) continue;
    const auto before = curve.at(curve.spans()[i], i - 1), after = curve.at(curve.spans()[i], i);
    for (int k = 0; k < 2; ++k) {
      EXPECT_NEAR(before[k].v, after[k].v, 1e-12);
      EXPECT_NEAR(before[k].d, after[k].d, 1e-12);
    }
  }
}

TEST(CompositeCurve, SharesAKinkBetweenBothArcs) {
  for (const double kink : {1e-5, 1e-3, -1e-2}) {
    const double off = most_off(arcs_of({{8, 0.25}, {9, 0.2}}, kink));
    EXPECT_LT(off, std::abs(kink) / 16 * 2) << "of a length of 2 mm";
    EXPECT_GT(off, std::abs(kink) / 160 * 2);
  }
}

struct Walls {
  Plan plan;
  Shell shell;
  std::size_t drawn = 0;  ///< walls of artwork
  std::size_t smooth = 0;
};

Walls walls_of(const Board& board, const Drawings& drawings, Stage stage) {
  const Layout layout = std::get<Layout>(lay_out(board));
  const Inlays inlays = std::get<Inlays>(fit_inlays(board, layout, drawings));
  Walls walls;
  walls.shell = lift(std::get<Plan>(make_plan(board, layout, surface_of(board, layout), inlays, stage)));
  for (const ShellFace& face : walls.shell.faces) {
    if (face.kind != ShellFace::Kind::wall || face.feature < 0 || !walls.shell.plan.features[face.feature].drawn)
      continue;
    ++walls.drawn;
    walls.smooth += face.run.empty() ? 0 : 1;
  }
  EXPECT_EQ(unsound(walls.shell), "");
  return walls;
}

Board plain_board() {
  Board board = read_board(places::tests() + "/bench/standard.toml").board;
  board.inlays.clear();
  board.side_dots.reset();
  board.cutters.clear();
  Cutter& cutter = board.cutters.emplace_back();
  cutter.use = {CutterUse::pocket_detail, CutterUse::piece};
  cutter.diameter = 0.8;
  return board;
}

/// The drawing of that name at a fret, so long.
void let_in(Board& board, int fret, double along) {
  Inlay& inlay = board.inlays.emplace_back();
  inlay.shape = InlayShape::artwork;
  inlay.file = "drawn";
  inlay.frets = {fret};
  inlay.along = along;
  inlay.depth = 1.6;
}

/// One smooth outline, mostly a long run.
Artwork wide_wave(unsigned seed) { return test::drawing({{"#202020", {test::wave({0, 0}, 16, 8, 1, seed)}}}); }

Walls walls_of(const Artwork& artwork, double along, Stage stage) {
  Board board = plain_board();
  let_in(board, 5, along);
  return walls_of(board, {{"drawn", artwork}}, stage);
}

int spline_faces(const TopoDS_Solid& solid) {
  int count = 0;
  for (TopExp_Explorer it(solid, TopAbs_FACE); it.More(); it.Next())
    count += !Handle(Geom_BSplineSurface)::DownCast(BRep_Tool::Surface(TopoDS::Face(it.Current()))).IsNull() ? 1 : 0;
  return count;
}

// Two are enough to close it; more keep a reader's fixed rule right (weigh_test.cpp), half as many as the drawn
// segments.
TEST(SmoothWalls, AClosedCurveIsAFewOfThem) {
  const Artwork artwork = test::drawing({{"#202020", {test::wave({0, 0}, 12, 8, 0.3, 2)}}});
  const Walls walls = walls_of(artwork, 18, Stage::pocketed);
  EXPECT_EQ(walls.smooth, walls.drawn);
  EXPECT_GE(walls.smooth, 2U);
  EXPECT_LE(walls.smooth, test::strokes(artwork) / 2);
  const TopoDS_Solid solid = make_solid(walls.shell);
  EXPECT_EQ(unsound(solid, 0), "");
  EXPECT_EQ(spline_faces(solid), static_cast<int>(walls.smooth));
}

TEST(SmoothWalls, CornersThatACutterRoundsAreNone) {
  // A triangle: three sides, and three corners rounded to the piece cutter's radius and the clearance.
  const Walls walls =
      walls_of(test::drawing({{"#202020", {test::polygon({{-6, -4}, {6, -4}, {0, 6}})}}}), 18, Stage::pocketed);
  EXPECT_EQ(walls.drawn, 6U);
  EXPECT_EQ(walls.smooth, 0U);
}

TEST(SmoothWalls, UnderTheRadiusTooAreSoundSolids) {
  const Walls walls = walls_of(test::drawing({{"#202020", {test::wave({0, 0}, 9, 9, 1, 3)}}}), 60, Stage::board);
  EXPECT_GE(walls.smooth, 2U);
  const TopoDS_Solid solid = make_solid(walls.shell);
  EXPECT_EQ(unsound(solid, genus(walls.shell)), "");
}

// A long wall under a compound radius: its furthest place is none of its ends. The facets are measured against the
// surface by themselves.
TEST(SmoothWalls, EncloseWhatTheirFacetsDo) {
  for (unsigned seed = 1; seed <= 8; ++seed) {
    Board board = plain_board();
    board.surface.profile = Profile::compound;
    board.surface.radius_at_nut = 240;
    board.surface.radius_at_heel = 380;
    let_in(board, 9, 21);
    const Layout layout = std::get<Layout>(lay_out(board));
    const Surface surface = surface_of(board, layout);
    const Inlays inlays = std::get<Inlays>(fit_inlays(board, layout, {{"drawn", wide_wave(seed)}}));
    const Plan plan = std::get<Plan>(make_piece_plan(board, layout, surface, inlays.pieces.at(0), PieceState::job));
    for (const Shell& part : connected_components(lift(plan))) {
      const TopoDS_Solid solid = make_solid(part);
      EXPECT_EQ(unsound(solid, genus(part)), "") << seed;
      const Mesh mesh = make_mesh(part, 0.001);
      EXPECT_NEAR(mass_properties(solid).volume, volume(mesh), volume_allowance(mesh, part)) << seed;
    }
  }
}

// A piece on its sheet is a prism: its area and volume by the closed forms of its arcs.
TEST(SmoothWalls, MeasureAsTheirArcsDo) {
  for (unsigned seed = 1; seed <= 8; ++seed) {
    Board board = plain_board();
    let_in(board, 9, 21);
    const Layout layout = std::get<Layout>(lay_out(board));
    const Inlays inlays = std::get<Inlays>(fit_inlays(board, layout, {{"drawn", wide_wave(seed)}}));
    const InlayPiece& piece = inlays.pieces.at(0);
    const Plan plan =
        std::get<Plan>(make_piece_plan(board, layout, surface_of(board, layout), piece, PieceState::sheet));
    const MassProperties found = mass_properties(make_solid(lift(plan)));
    const double floor = area(piece.piece), around = perimeter(piece.piece.at(0));
    EXPECT_NEAR(found.volume / (floor * piece.thickness), 1, 1e-7) << seed;
    EXPECT_NEAR(found.area / (2 * floor + around * piece.thickness), 1, 1e-7) << seed;
    EXPECT_NEAR(found.centroid[2], piece.thickness / 2, 1e-6) << seed;
  }
}

// The bar for CAM packages, which pick walls one by one: at most four for each segment of the drawing.
TEST(SmoothWalls, AreAtMostFourForEachDrawnSegment) {
  for (const char* preset : {"egret-figure", "wave-border", "numerals"}) {
    const Board board = read_board(places::tests() + "/../presets/" + preset + ".toml").board;
    const Drawings drawings = std::get<Drawings>(read_drawings(board));
    std::size_t drawn = 0;
    for (const Inlay& inlay : board.inlays)
      if (inlay.shape == InlayShape::artwork)
        drawn += test::strokes(drawings.at(inlay.file)) * std::max<std::size_t>(1, inlay.frets.size());
    const std::size_t walls = walls_of(board, drawings, Stage::pocketed).drawn;
    EXPECT_LE(walls, 4 * drawn) << preset;
    EXPECT_GT(walls, drawn / 4) << preset;
    RecordProperty(std::string(preset) + "-walls", static_cast<int>(walls));
    RecordProperty(std::string(preset) + "-segments", static_cast<int>(drawn));
  }
  for (unsigned seed = 1; seed <= 6; ++seed) {
    const Artwork artwork =
        test::drawing({{"#202020", {test::wave({0, 0}, 10 + static_cast<int>(seed), 9, 1.5, seed)}}});
    EXPECT_LE(walls_of(artwork, 18, Stage::pocketed).drawn, 2 * test::strokes(artwork)) << seed;
  }
}

}  // namespace
}  // namespace sagitta
