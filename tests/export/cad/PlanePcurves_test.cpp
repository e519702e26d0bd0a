#include "solid/PlanePcurves.hpp"

#include <gtest/gtest.h>

#include <BRep_Tool.hxx>
#include <Geom2d_Curve.hxx>
#include <Geom_Curve.hxx>
#include <Geom_Plane.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>

#include "cad/Gate.hpp"
#include "export/CommandLine.hpp"
#include "input/PreparedFile.hpp"

namespace sagitta::test {
namespace {

/// A pcurve is the edge's own curve seen on the plane: the same point at the same parameter (ISO 10303-42, pcurve).
TEST(PlanePcurves, AreKeptByEveryPublishedSolidAndLieOnTheirEdges) {
  const PreparedBoard board = std::get<PreparedBoard>(prepare(preset_path("heron-six").string()));
  const TopoDS_Solid solid = sound_solid(board.shell(Stage::board), {"board", "board"}).solid;
  int seen = 0;
  for (TopExp_Explorer face(solid, TopAbs_FACE); face.More(); face.Next()) {
    const Handle(Geom_Surface) plane = BRep_Tool::Surface(TopoDS::Face(face.Current()));
    if (Handle(Geom_Plane)::DownCast(plane).IsNull()) continue;
    for (TopExp_Explorer edge(face.Current(), TopAbs_EDGE); edge.More(); edge.Next()) {
      double first = 0, last = 0, from = 0, to = 0;
      bool stored = false;
      const Handle(Geom2d_Curve) pcurve =
          BRep_Tool::CurveOnSurface(TopoDS::Edge(edge.Current()), TopoDS::Face(face.Current()), first, last, &stored);
      ASSERT_TRUE(stored);
      const Handle(Geom_Curve) curve = BRep_Tool::Curve(TopoDS::Edge(edge.Current()), from, to);
      for (const double part : {0.0, 0.3, 1.0}) {
        const gp_Pnt2d on = pcurve->Value(first + part * (last - first));
        EXPECT_LT(plane->Value(on.X(), on.Y()).Distance(curve->Value(from + part * (to - from))), 1e-7);
      }
      ++seen;
    }
  }
  EXPECT_GT(seen, 100) << "the test no longer sees the planes";
}

}  // namespace
}  // namespace sagitta::test
