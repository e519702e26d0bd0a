#include "solid/NeckMesher.hpp"

#include <BRepLib.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Tool.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <Poly_PolygonOnTriangulation.hxx>
#include <Poly_Triangulation.hxx>
#include <STEPControl_Reader.hxx>
#include <Standard_Failure.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>

#include "solid/PlacedNeck.hpp"

namespace sagitta {
namespace {

/// Neighbouring facets of a round face turn by no more than this. Radians.
constexpr double facet_turn = 0.25;

NeckWood failed(const std::string& why) {
  NeckWood wood;
  wood.failure = why;
  return wood;
}

/// Faces and lines of a meshed shape, one after the other.
class Collector {
 public:
  /// With the lines among its edges that `crisp` holds.
  void add(const TopoDS_Face& face, const TopTools_IndexedDataMapOfShapeListOfShape& crisp) {
    TopLoc_Location location;
    const Handle(Poly_Triangulation) mesh = BRep_Tool::Triangulation(face, location);
    if (mesh.IsNull()) return;
    const auto first = static_cast<std::uint32_t>(wood.points.size());
    for (int i = 1; i <= mesh->NbNodes(); ++i) {
      const gp_Pnt p = mesh->Node(i).Transformed(location.Transformation());
      wood.points.push_back({static_cast<float>(p.X()), static_cast<float>(p.Y()), static_cast<float>(p.Z())});
    }
    const auto node = [&](int i) { return first + static_cast<std::uint32_t>(i - 1); };
    for (int i = 1; i <= mesh->NbTriangles(); ++i) {
      int a = 0, b = 0, c = 0;
      mesh->Triangle(i).Get(a, b, c);
      if (face.Orientation() == TopAbs_REVERSED) std::swap(b, c);
      wood.triangles.push_back({node(a), node(b), node(c)});
    }
    for (TopExp_Explorer it(face, TopAbs_EDGE); it.More(); it.Next()) {
      const TopoDS_Edge& edge = TopoDS::Edge(it.Current());
      const int index = crisp.FindIndex(edge);
      if (index == 0 || !crisp(index).First().IsSame(face)) continue;
      const Handle(Poly_PolygonOnTriangulation) line = BRep_Tool::PolygonOnTriangulation(edge, mesh, location);
      if (line.IsNull()) continue;
      for (int i = 1; i < line->NbNodes(); ++i) wood.edges.push_back({node(line->Node(i)), node(line->Node(i + 1))});
    }
  }

  NeckWood wood;
};

/// The edges where two faces meet at an angle, each with its faces.
TopTools_IndexedDataMapOfShapeListOfShape crisp_edges(const TopoDS_Shape& shape) {
  BRepLib::EncodeRegularity(shape);
  TopTools_IndexedDataMapOfShapeListOfShape all, crisp;
  TopExp::MapShapesAndAncestors(shape, TopAbs_EDGE, TopAbs_FACE, all);
  for (int i = 1; i <= all.Extent(); ++i) {
    const TopoDS_Edge& edge = TopoDS::Edge(all.FindKey(i));
    if (all(i).Extent() != 2 || BRep_Tool::Degenerated(edge)) continue;
    const TopoDS_Face &a = TopoDS::Face(all(i).First()), &b = TopoDS::Face(all(i).Last());
    if (a.IsSame(b) || BRep_Tool::Continuity(edge, a, b) != GeomAbs_C0) continue;
    crisp.Add(edge, all(i));
  }
  return crisp;
}

NeckWood wood_of(const TopoDS_Shape& shape) {
  const BRepMesh_IncrementalMesh mesh(shape, neck_deviation, false, facet_turn);
  if (!mesh.IsDone()) return failed("the neck's surfaces could not be made triangles");
  const auto crisp = crisp_edges(shape);
  Collector collector;
  for (TopExp_Explorer it(shape, TopAbs_FACE); it.More(); it.Next()) {
    collector.add(TopoDS::Face(it.Current()), crisp);
    if (collector.wood.triangles.size() > most_neck_triangles)
      return failed("the neck has too many surfaces to be shown: its mesh is larger than " +
                    std::to_string(most_neck_triangles) + " triangles");
  }
  if (collector.wood.triangles.empty()) return failed("the neck's file holds no wood beside the board's");
  return std::move(collector.wood);
}

}  // namespace

NeckWood mesh_neck(const std::string& path, const BoardSeat& seat, const NeckPlace& place) try {
  Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer));
  STEPControl_Reader reader;
  if (reader.ReadFile(path.c_str()) != IFSelect_RetDone || reader.TransferRoots() == 0)
    return failed("the neck's file cannot be read as STEP");
  const TopoDS_Shape read = reader.OneShape();
  if (read.IsNull()) return failed("the neck's file holds no solid");
  return wood_of(placed(solids_of(read), place, seat).wood);
} catch (const Standard_Failure&) {
  return failed("the geometry kernel gave up on the neck's file");
} catch (const std::exception&) {
  return failed("the neck's file could not be read in the memory that was allowed");
}

}  // namespace sagitta
