// The judgement of solids. Mutations are told by their kind; and what the kernel's STEP reader makes unsound of a solid
// is refused before it is written: the round trip through a file is the reference, over mutations of several sizes and
// over discs that touch from inside.

#include <gtest/gtest.h>

#include <BRepCheck_Analyzer.hxx>
#include <BRep_Builder.hxx>
#include <BRep_Tool.hxx>
#include <Geom2d_Curve.hxx>
#include <Geom_Curve.hxx>
#include <Geom_Plane.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Vertex.hxx>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "made/Made.hpp"
#include "oracle/Catalogue.hpp"
#include "plan/WoodVolume.hpp"
#include "solid/ShallowFace.hpp"
#include "solid/Solid.hpp"
#include "solid/SolidFlaw.hpp"
#include "solid/StepCopy.hpp"

namespace sagitta {
namespace {

Shell shell_of(const std::string& single) {
  return std::get<Shell>(
      made::shell_of(read_board(places::tests() + "/cases/singles/" + single + ".toml").board, Stage::board));
}

std::vector<TopoDS_Face> faces_of(const TopoDS_Solid& solid) {
  std::vector<TopoDS_Face> faces;
  for (TopExp_Explorer it(solid, TopAbs_FACE); it.More(); it.Next()) faces.push_back(TopoDS::Face(it.Current()));
  return faces;
}

/// A solid of these faces in one shell.
TopoDS_Solid solid_of(const std::vector<TopoDS_Face>& faces) {
  BRep_Builder brep;
  TopoDS_Shell shell;
  brep.MakeShell(shell);
  for (const TopoDS_Face& face : faces) brep.Add(shell, face);
  shell.Closed(true);
  TopoDS_Solid solid;
  brep.MakeSolid(solid);
  brep.Add(solid, shell);
  return solid;
}

/// Moves the image of one edge of one curved face.
void move_pcurve(const TopoDS_Solid& solid, double by) {
  for (const TopoDS_Face& face : faces_of(solid)) {
    const Handle(Geom_Surface) surface = BRep_Tool::Surface(face);
    if (!Handle(Geom_Plane)::DownCast(surface).IsNull()) continue;
    const TopoDS_Edge edge = TopoDS::Edge(TopExp_Explorer(face, TopAbs_EDGE).Current());
    double first = 0, last = 0;
    const Handle(Geom2d_Curve) pcurve = BRep_Tool::CurveOnSurface(edge, face, first, last);
    BRep_Builder().UpdateEdge(edge, Handle(Geom2d_Curve)::DownCast(pcurve->Translated(gp_Vec2d(0, by))), surface,
                              TopLoc_Location(), BRep_Tool::Tolerance(edge));
    return;
  }
}

/// Moves the curve of an edge.
void move_curve(const TopoDS_Solid& solid, int which, double by) {
  TopTools_IndexedMapOfShape edges;
  TopExp::MapShapes(solid, TopAbs_EDGE, edges);
  const TopoDS_Edge edge = TopoDS::Edge(edges(1 + which % edges.Extent()));
  double first = 0, last = 0;
  const Handle(Geom_Curve) curve = BRep_Tool::Curve(edge, first, last);
  BRep_Builder().UpdateEdge(edge, Handle(Geom_Curve)::DownCast(curve->Translated(gp_Vec(by, by, by))),
                            BRep_Tool::Tolerance(edge));
}

void move_vertex(const TopoDS_Solid& solid, int which, double by) {
  TopTools_IndexedMapOfShape vertices;
  TopExp::MapShapes(solid, TopAbs_VERTEX, vertices);
  const TopoDS_Vertex vertex = TopoDS::Vertex(vertices(1 + which % vertices.Extent()));
  const gp_Pnt p = BRep_Tool::Pnt(vertex).Translated(gp_Vec(by, -by, by));
  BRep_Builder().UpdateVertex(vertex, p, BRep_Tool::Tolerance(vertex));
}

std::optional<Flaw::Kind> kind_of(const TopoDS_Solid& solid) {
  const auto flaw = flaw_in(solid, 2);
  return flaw ? std::optional(flaw->kind) : std::nullopt;
}

/// By the kernel's own means only: what its reader makes of the file.
bool sound_after_step(const TopoDS_Solid& solid) {
  const StepCopy copy = through_step(solid, "flaw");
  if (!copy.trouble.empty() || !BRepCheck_Analyzer(copy.solid).IsValid()) return false;
  TopTools_IndexedMapOfShape vertices;
  TopExp::MapShapes(copy.solid, TopAbs_VERTEX, vertices);
  for (int v = 1; v <= vertices.Extent(); ++v)
    if (BRep_Tool::Tolerance(TopoDS::Vertex(vertices(v))) > 1e-5) return false;
  return true;
}

TEST(SolidFlaw, AWrongImage) {
  for (const double by : {1e-5, 1e-3, 0.1}) {
    const TopoDS_Solid solid = make_solid(shell_of("S05"));
    ASSERT_EQ(kind_of(solid), std::nullopt);
    move_pcurve(solid, by);
    EXPECT_EQ(kind_of(solid), Flaw::Kind::pcurve) << by;
  }
}

/// A volume never sees the curve of an edge in space.
TEST(SolidFlaw, AWrongCurve) {
  for (const double by : {1e-5, 1e-3, 0.1})
    for (const int which : {3, 17, 40}) {
      const TopoDS_Solid solid = make_solid(shell_of("S05"));
      move_curve(solid, which, by);
      EXPECT_EQ(kind_of(solid), Flaw::Kind::pcurve) << by;
    }
}

TEST(SolidFlaw, AnEdgeOfThreeFaces) {
  std::vector<TopoDS_Face> faces = faces_of(make_solid(shell_of("S05")));
  faces.push_back(faces[3]);
  EXPECT_EQ(kind_of(solid_of(faces)), Flaw::Kind::edge_use);
}

TEST(SolidFlaw, AMissingFaceAndAFlippedOne) {
  std::vector<TopoDS_Face> faces = faces_of(make_solid(shell_of("S05")));
  EXPECT_EQ(kind_of(solid_of(faces)), std::nullopt);
  faces[3].Reverse();
  EXPECT_EQ(kind_of(solid_of(faces)), Flaw::Kind::edge_use);
  faces.erase(faces.begin() + 3);
  EXPECT_EQ(kind_of(solid_of(faces)), Flaw::Kind::edge_use);
  EXPECT_EQ(kind_of(solid_of({})), Flaw::Kind::empty);
}

TEST(SolidFlaw, AnUncertainVertex) {
  const TopoDS_Solid solid = make_solid(shell_of("S00"));
  BRep_Builder().UpdateVertex(TopoDS::Vertex(TopExp_Explorer(solid, TopAbs_VERTEX).Current()), 2e-5);
  EXPECT_EQ(kind_of(solid), Flaw::Kind::tolerance);
}

// Radius 240 mm and 1e6 mm; the flat board's planes are curved nowhere.
TEST(ShallowFace, IsCurvedAlmostNot) {
  EXPECT_FALSE(has_shallow_face(make_solid(shell_of("S00"))));
  EXPECT_TRUE(has_shallow_face(make_solid(shell_of("S86"))));
  EXPECT_FALSE(has_shallow_face(make_solid(shell_of("S33"))));
}

TEST(SolidFlaw, AHoleThatThePlanHasNot) {
  const TopoDS_Solid solid = make_solid(shell_of("S00"));
  EXPECT_EQ(flaw_in(solid, 0)->kind, Flaw::Kind::euler);
}

/// Faces stand in the order of the shell: a flaw's face is named rightly.
TEST(SolidFlaw, NamesTheFace) {
  const Shell shell = shell_of("S05");
  const TopoDS_Solid solid = make_solid(shell);
  move_pcurve(solid, 1e-3);
  const Flaw flaw = *flaw_in(solid, 2);
  ASSERT_GE(flaw.face, 0);
  const ShellFace& face = shell.faces.at(static_cast<std::size_t>(flaw.face));
  EXPECT_TRUE(face.bound.kind == BoundingSurface::Kind::offset_surface || face.segment.is_arc());
}

TEST(SolidFlaw, IsNeverMilderThanReadingTheFile) {
  int refused = 0, unsound_after = 0;
  const auto judge = [&](const TopoDS_Solid& solid, const std::string& what) {
    const bool sound = sound_after_step(solid);
    const bool passes = !flaw_in(solid, 2);
    unsound_after += !sound;
    refused += !passes;
    EXPECT_TRUE(sound || !passes) << what;
  };
  int which = 0;
  for (const char* single : {"S05", "S43", "S09", "S35"})
    for (double by = 1e-8; by < 0.2; by *= 10) {
      const std::string what = std::string(single) + " by " + std::to_string(by);
      const auto fresh = [&] { return make_solid(shell_of(single)); };
      const TopoDS_Solid pcurve = fresh(), curve = fresh(), vertex = fresh();
      move_pcurve(pcurve, by);
      move_curve(curve, which += 7, by);
      move_vertex(vertex, which += 7, by);
      judge(pcurve, "image, " + what);
      judge(curve, "curve, " + what);
      judge(vertex, "vertex, " + what);
    }
  EXPECT_GT(unsound_after, 10);
  EXPECT_GT(refused, 20);
}

/// Two dots of different depth, the smaller touching the larger from inside: their circles can hardly be told apart
/// near the place where they touch, the less the more alike they are.
TEST(SolidFlaw, IsNeverMilderThanReadingTheFileWhereDiscsTouchFromInside) {
  for (double gap = 1e-5; gap < 0.2; gap *= 10) {
    char inlays[400];
    std::snprintf(
        inlays, sizeof inlays,
        "[[inlays]]\nshape = \"dot\"\nfrets = [3]\ndiameter = 11.9\ndepth = 1.5\nclearance = 0\n"
        "[[inlays]]\nshape = \"dot\"\nfrets = [3]\ndiameter = %.12f\ndepth = 2\nclearance = 0\nshift_along = %.12f\n",
        11.9 - 2 * gap, gap);
    const Board board = read_board_text(
                            "format = 1\n[scale]\nlength = 650\nfrets = 12\n[strings]\ncount = 6\nnut_spread = 40\n"
                            "saddle_spread = 50\n[board]\nthickness = 6.5\nedge_margin = 3\n[surface]\n"
                            "profile = \"single\"\nradius_at_nut = 240\n" +
                                std::string(inlays),
                            "board.toml", ".")
                            .board;
    for (const Stage stage : {Stage::pocketed, Stage::board}) {
      auto made = made::shell_of(board, stage);
      if (!std::holds_alternative<Shell>(made)) continue;
      const Shell shell = std::get<Shell>(std::move(made));
      const TopoDS_Solid solid = make_solid(shell);
      EXPECT_TRUE(sound_after_step(solid) || flaw_in(solid, 2 - 2 * genus(shell))) << gap << " " << name(stage);
    }
  }
}

/// All boards of the catalogue of special cases pass, and their plan's own volume is the reference.
TEST(SolidFlaws, NoneInTheCatalogue) {
  for (const oracle::Case& one : oracle::catalogue(places::tests() + "/cases")) {
    if (one.refused) continue;
    const Shell shell = std::get<Shell>(made::shell_of(read_board(one.path).board, Stage::board));
    const auto flaw = flaw_in(make_solid(shell), 2 - 2 * genus(shell));
    EXPECT_FALSE(flaw) << one.name << " " << (flaw ? flaw->what : "");
    EXPECT_NEAR(wood_volume(shell.plan) / one.volume, 1, 1e-6) << one.name;
  }
}

}  // namespace
}  // namespace sagitta
