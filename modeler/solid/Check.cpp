#include <BRepBndLib.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <sstream>

#include "solid/Solid.hpp"

namespace sagitta {
namespace {

/// Relative error asked of the adaptive volume integrals: the fixed-order ones miss 1e-6 beside the tip of an ellipse.
constexpr double integration = 1e-7;

int count(const TopoDS_Shape& shape, TopAbs_ShapeEnum kind) {
  TopTools_IndexedMapOfShape map;
  TopExp::MapShapes(shape, kind, map);
  return map.Extent();
}

/// Wires of one face that touch in a vertex are one loop.
int loops_of(const TopoDS_Shape& solid) {
  int loops = count(solid, TopAbs_WIRE);
  for (TopExp_Explorer face(solid, TopAbs_FACE); face.More(); face.Next()) {
    TopTools_IndexedMapOfShape seen;
    for (TopExp_Explorer wire(face.Current(), TopAbs_WIRE); wire.More(); wire.Next()) {
      TopTools_IndexedMapOfShape own;
      TopExp::MapShapes(wire.Current(), TopAbs_VERTEX, own);
      for (int i = 1; i <= own.Extent(); ++i)
        if (seen.Contains(own(i))) --loops;
      for (int i = 1; i <= own.Extent(); ++i) seen.Add(own(i));
    }
  }
  return loops;
}

int uses(const TopoDS_Edge& edge, const TopTools_ListOfShape& faces) {
  int sum = 0;
  for (const TopoDS_Shape& face : faces)
    for (TopExp_Explorer it(face, TopAbs_EDGE); it.More(); it.Next())
      if (it.Current().IsSame(edge)) ++sum;
  return sum;
}

}  // namespace

SolidFigures figures(const TopoDS_Solid& solid) {
  SolidFigures result;
  GProp_GProps volume, area;
  BRepGProp::VolumeProperties(solid, volume, integration);
  BRepGProp::SurfaceProperties(solid, area);
  result.volume = volume.Mass();
  result.area = area.Mass();
  volume.CentreOfMass().Coord(result.centroid[0], result.centroid[1], result.centroid[2]);
  Bnd_Box box;
  BRepBndLib::AddOptimal(solid, box, false, false);
  box.Get(result.low[0], result.low[1], result.low[2], result.high[0], result.high[1], result.high[2]);
  return result;
}

std::string unsound(const TopoDS_Solid& solid, int genus) {
  std::ostringstream wrong;
  if (!BRepCheck_Analyzer(solid).IsValid()) wrong << "BRepCheck finds it invalid\n";
  if (count(solid, TopAbs_SHELL) != 1) wrong << count(solid, TopAbs_SHELL) << " shells\n";
  for (TopExp_Explorer it(solid, TopAbs_SHELL); it.More(); it.Next())
    if (!BRep_Tool::IsClosed(it.Current())) wrong << "open shell\n";
  TopTools_IndexedDataMapOfShapeListOfShape faces_of_edge;
  TopExp::MapShapesAndUniqueAncestors(solid, TopAbs_EDGE, TopAbs_FACE, faces_of_edge);
  for (int i = 1; i <= faces_of_edge.Extent(); ++i) {
    const int n = uses(TopoDS::Edge(faces_of_edge.FindKey(i)), faces_of_edge(i));
    if (n != 2) wrong << "an edge is used " << n << " times\n";
  }
  const int faces = count(solid, TopAbs_FACE), loops = loops_of(solid);
  const int euler = count(solid, TopAbs_VERTEX) - count(solid, TopAbs_EDGE) + faces - (loops - faces);
  if (euler != 2 * (1 - genus)) wrong << "Euler number " << euler << " instead of " << 2 * (1 - genus) << "\n";
  return wrong.str();
}

}  // namespace sagitta
