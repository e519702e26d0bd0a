#include "solid/PlanePcurves.hpp"

#include <BRepLib.hxx>
#include <BRep_Tool.hxx>
#include <Geom_Plane.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>

namespace sagitta {

void keep_plane_pcurves(const TopoDS_Solid& solid) {
  for (TopExp_Explorer face(solid, TopAbs_FACE); face.More(); face.Next()) {
    const TopoDS_Face& plane = TopoDS::Face(face.Current());
    if (Handle(Geom_Plane)::DownCast(BRep_Tool::Surface(plane)).IsNull()) continue;
    for (TopExp_Explorer edge(plane, TopAbs_EDGE); edge.More(); edge.Next())
      BRepLib::BuildPCurveForEdgeOnPlane(TopoDS::Edge(edge.Current()), plane);
  }
}

}  // namespace sagitta
