#include "solid/NeckFile.hpp"

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRepTools.hxx>
#include <BRepTools_WireExplorer.hxx>
#include <Bnd_Box.hxx>
#include <GCPnts_QuasiUniformDeflection.hxx>
#include <GC_MakeArcOfCircle.hxx>
#include <GProp_GProps.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <STEPControl_Reader.hxx>
#include <Standard_Failure.hxx>
#include <TColStd_SequenceOfAsciiString.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <algorithm>
#include <optional>

namespace sagitta {
namespace {

/// How far an outline's polyline may stray from its curve. mm.
constexpr double stray = 0.001;
/// A face looks up when its normal leans less than this from z: 25 degrees.
constexpr double least_up = 0.906;
/// Faces that touch are no interference: the board's prism begins this much above the glue face. mm.
constexpr double clear_of_glue = 0.01;

double area_of(const TopoDS_Face& face) {
  GProp_GProps figures;
  BRepGProp::SurfaceProperties(face, figures);
  return figures.Mass();
}

bool looks_up(const TopoDS_Face& face) {
  const BRepAdaptor_Surface surface(face);
  gp_Pnt at;
  gp_Vec u, v;
  surface.D1((surface.FirstUParameter() + surface.LastUParameter()) / 2,
             (surface.FirstVParameter() + surface.LastVParameter()) / 2, at, u, v);
  gp_Vec normal = u.Crossed(v);
  if (normal.Magnitude() <= gp::Resolution()) return false;
  normal.Normalize();
  return (face.Orientation() == TopAbs_REVERSED ? -normal.Z() : normal.Z()) > least_up;
}

std::optional<TopoDS_Face> glue_face(const TopoDS_Shape& shape) {
  std::optional<TopoDS_Face> best;
  double largest = 0;
  for (TopExp_Explorer it(shape, TopAbs_FACE); it.More(); it.Next()) {
    const TopoDS_Face face = TopoDS::Face(it.Current());
    if (!looks_up(face)) continue;
    const double area = area_of(face);
    if (area > largest) largest = area, best = face;
  }
  return best;
}

/// Points of one edge in the wire's sense, without its last.
void trace(const TopoDS_Edge& edge, std::vector<Place3>& points) {
  const BRepAdaptor_Curve curve(edge);
  std::vector<Place3> own;
  const auto take = [&](const gp_Pnt& p) { own.push_back({p.X(), p.Y(), p.Z()}); };
  if (curve.GetType() == GeomAbs_Line) {
    take(curve.Value(curve.FirstParameter()));
    take(curve.Value(curve.LastParameter()));
  } else {
    const GCPnts_QuasiUniformDeflection steps(curve, stray);
    for (int i = 1; steps.IsDone() && i <= steps.NbPoints(); ++i) take(steps.Value(i));
  }
  if (edge.Orientation() == TopAbs_REVERSED) std::reverse(own.begin(), own.end());
  if (!own.empty()) own.pop_back();
  points.insert(points.end(), own.begin(), own.end());
}

std::vector<std::vector<Place3>> outlines_of(const TopoDS_Face& face) {
  std::vector<std::vector<Place3>> outlines;
  for (TopExp_Explorer it(face, TopAbs_WIRE); it.More(); it.Next()) {
    std::vector<Place3> points;
    for (BRepTools_WireExplorer edges(TopoDS::Wire(it.Current()), face); edges.More(); edges.Next())
      trace(edges.Current(), points);
    if (points.size() > 2) outlines.push_back(std::move(points));
  }
  return outlines;
}

TopoDS_Shape prism(const Loop& outline, double from, double to) {
  const auto lifted = [&](Point p) { return gp_Pnt(p.x, p.y, from); };
  BRepBuilderAPI_MakeWire wire;
  for (const CurveSegment& segment : outline) {
    if (segment.is_arc())
      wire.Add(BRepBuilderAPI_MakeEdge(
          GC_MakeArcOfCircle(lifted(segment.a), lifted(segment.at(0.5)), lifted(segment.b)).Value()));
    else
      wire.Add(BRepBuilderAPI_MakeEdge(lifted(segment.a), lifted(segment.b)));
  }
  return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(wire.Wire(), true).Face(), gp_Vec(0, 0, to - from));
}

double common_volume(const TopoDS_Shape& neck, const TopoDS_Shape& board) {
  Bnd_Box space;
  BRepBndLib::Add(board, space);
  double volume = 0;
  for (TopExp_Explorer it(neck, TopAbs_SOLID); it.More(); it.Next()) {
    Bnd_Box box;
    BRepBndLib::AddOptimal(it.Current(), box, false, false);
    if (box.IsOut(space)) continue;
    BRepAlgoAPI_Common common(it.Current(), board);
    if (!common.IsDone()) continue;
    GProp_GProps figures;
    BRepGProp::VolumeProperties(common.Shape(), figures);
    volume += std::max(0.0, figures.Mass());
  }
  return volume;
}

double middle_height(const std::vector<std::vector<Place3>>& outlines) {
  double sum = 0, count = 0;
  for (const auto& outline : outlines)
    for (const Place3& place : outline) sum += place[2], count += 1;
  return count > 0 ? sum / count : 0;
}

std::string unit_of(STEPControl_Reader& reader) {
  TColStd_SequenceOfAsciiString lengths, angles, solid_angles;
  reader.FileUnits(lengths, angles, solid_angles);
  return lengths.IsEmpty() ? "" : lengths.First().ToCString();
}

int count(const TopoDS_Shape& shape, TopAbs_ShapeEnum what) {
  int found = 0;
  for (TopExp_Explorer it(shape, what); it.More(); it.Next()) ++found;
  return found;
}

NeckReading failed(const std::string& why) { return {{}, why}; }

NeckReading neck_of(STEPControl_Reader& reader, const Loop& outline, double thickness) {
  const TopoDS_Shape shape = reader.OneShape();
  if (shape.IsNull() || count(shape, TopAbs_FACE) == 0) return failed("the neck's file holds no faces");
  const auto glue = glue_face(shape);
  if (!glue) return failed("the neck has no face that looks up: draw it as the board lies, with its glue face up");
  NeckShape neck;
  neck.unit = unit_of(reader);
  neck.solids = count(shape, TopAbs_SOLID);
  neck.faces = count(shape, TopAbs_FACE);
  neck.planar = BRepAdaptor_Surface(*glue).GetType() == GeomAbs_Plane;
  neck.outlines = outlines_of(*glue);
  if (neck.outlines.empty()) return failed("the neck's glue face has no outline");
  const double floor = middle_height(neck.outlines);
  neck.interference = common_volume(shape, prism(outline, floor + clear_of_glue, floor + thickness));
  return {neck, ""};
}

}  // namespace

NeckReading read_neck(const std::string& path, const Loop& outline, double thickness) try {
  Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer));
  STEPControl_Reader reader;
  if (reader.ReadFile(path.c_str()) != IFSelect_RetDone)
    return failed("the neck's file cannot be read as STEP: it is not one, or it is cut short");
  if (reader.TransferRoots() == 0) return failed("the neck's file holds nothing that could be read");
  return neck_of(reader, outline, thickness);
} catch (const Standard_Failure&) {
  return failed("the geometry kernel gave up on the neck's file");
} catch (const std::exception&) {
  return failed("the neck's file could not be read in the memory that was allowed");
}

}  // namespace sagitta
