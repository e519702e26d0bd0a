#include "solid/NeckFaces.hpp"

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepGProp.hxx>
#include <BRepTools_WireExplorer.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GCPnts_QuasiUniformDeflection.hxx>
#include <GProp_GProps.hxx>
#include <GeomAPI_ProjectPointOnSurf.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopoDS.hxx>
#include <algorithm>
#include <cmath>
#include <optional>

namespace sagitta {
namespace {

/// How far an outline's polyline may stray from its curve. mm.
constexpr double stray = 0.001;
/// What a glue face may depart from its plane: more is no glue face. mm.
constexpr double most_bow = 1;
/// Plane faces of one plane lie within this of it, and lean no more. mm, cosine of 0.02 degrees.
constexpr double one_plane = 0.02, one_lean = 1 - 6e-8;
/// A bowed face's neighbours carry it on when they lean less: cosine of a degree.
constexpr double carried_on = 0.99985;
/// A rounded edge leaves the glue face within this cosine (3 degrees), and is no wider. mm.
constexpr double tangent = 0.9986, widest_rounding = 5;
/// Faces beyond this many, the smallest, are not grouped.
constexpr std::size_t most_faces = 400;

struct FacePart {
  TopoDS_Face face;
  NeckOutlines outlines;
  gp_Pnt middle;
  gp_Dir up{0, 0, 1};
  double area = 0, reach = 0;
  bool planar = false, grouped = false;
  int solid = 0;
};

double area_of(const TopoDS_Face& face) {
  GProp_GProps figures;
  BRepGProp::SurfaceProperties(face, figures);
  return figures.Mass();
}

/// The normal out of the wood, in the middle of the face's parameters.
std::optional<gp_Dir> normal_of(const TopoDS_Face& face, double u, double v) {
  const BRepAdaptor_Surface surface(face);
  gp_Pnt at;
  gp_Vec du, dv;
  surface.D1(u, v, at, du, dv);
  gp_Vec normal = du.Crossed(dv);
  if (normal.Magnitude() <= gp::Resolution()) return {};
  if (face.Orientation() == TopAbs_REVERSED) normal.Reverse();
  return gp_Dir(normal);
}

std::optional<gp_Dir> middle_normal(const TopoDS_Face& face) {
  const BRepAdaptor_Surface surface(face);
  return normal_of(face, (surface.FirstUParameter() + surface.LastUParameter()) / 2,
                   (surface.FirstVParameter() + surface.LastVParameter()) / 2);
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

NeckOutlines outlines_of(const TopoDS_Face& face) {
  NeckOutlines outlines;
  for (TopExp_Explorer it(face, TopAbs_WIRE); it.More(); it.Next()) {
    std::vector<Place3> points;
    for (BRepTools_WireExplorer edges(TopoDS::Wire(it.Current()), face); edges.More(); edges.Next())
      trace(edges.Current(), points);
    if (points.size() > 2) outlines.push_back(std::move(points));
  }
  return outlines;
}

/// The plane through points by least squares: its middle, and its normal by Newell's sum over the outlines, which is
/// the mean normal of what they bound.
void set_plane(FacePart& face) {
  gp_XYZ middle(0, 0, 0), normal(0, 0, 0);
  double count = 0;
  for (const auto& outline : face.outlines)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Place3 &a = outline[i], &b = outline[(i + 1) % outline.size()];
      middle += gp_XYZ(a[0], a[1], a[2]), count += 1;
      normal += gp_XYZ((a[1] - b[1]) * (a[2] + b[2]), (a[2] - b[2]) * (a[0] + b[0]), (a[0] - b[0]) * (a[1] + b[1]));
    }
  face.middle = gp_Pnt(middle / count);
  if (normal.Modulus() <= gp::Resolution()) return;
  gp_Dir up(normal);
  if (up.Dot(face.up) < 0) up.Reverse();
  face.up = up;
}

double off_plane(const NeckOutlines& outlines, const gp_Pnt& middle, const gp_Dir& up) {
  double most = 0;
  for (const auto& outline : outlines)
    for (const Place3& p : outline)
      most = std::max(most, std::abs(gp_Vec(middle, gp_Pnt(p[0], p[1], p[2])).Dot(gp_Vec(up))));
  return most;
}

double reach_of(const NeckOutlines& outlines) {
  double most = 0;
  const Place3& from = outlines.front().front();
  for (const auto& outline : outlines)
    for (const Place3& p : outline) most = std::max(most, std::hypot(p[0] - from[0], p[1] - from[1], p[2] - from[2]));
  return most;
}

/// A face that could be glued to, or a part of one.
std::optional<FacePart> face_of(const TopoDS_Face& shape, int solid) {
  FacePart face;
  face.face = shape, face.solid = solid;
  face.planar = BRepAdaptor_Surface(shape).GetType() == GeomAbs_Plane;
  const auto up = middle_normal(shape);
  if (!up) return {};
  face.up = *up;
  face.outlines = outlines_of(shape);
  if (face.outlines.empty()) return {};
  set_plane(face);
  if (face.planar) face.up = *up;
  if (!face.planar && off_plane(face.outlines, face.middle, face.up) > most_bow) return {};
  face.area = area_of(shape), face.reach = reach_of(face.outlines);
  return face;
}

/// Which faces use an edge.
using EdgeFaces = TopTools_IndexedDataMapOfShapeListOfShape;

bool are_neighbours(const EdgeFaces& edges, const TopoDS_Face& a, const TopoDS_Face& b) {
  for (TopExp_Explorer it(a, TopAbs_EDGE); it.More(); it.Next()) {
    const int at = edges.FindIndex(it.Current());
    if (at == 0) continue;
    for (const TopoDS_Shape& other : edges(at))
      if (other.IsSame(b)) return true;
  }
  return false;
}

/// Grows a group from its first face: of a plane all faces in it, of a bowed one its neighbours.
std::vector<FacePart*> grown(std::vector<FacePart>& faces, FacePart& first, const EdgeFaces& edges) {
  std::vector<FacePart*> group{&first};
  first.grouped = true;
  if (first.planar) {
    for (FacePart& other : faces)
      if (!other.grouped && other.planar && other.up.Dot(first.up) > one_lean &&
          off_plane(other.outlines, first.middle, first.up) < one_plane)
        other.grouped = true, group.push_back(&other);
    return group;
  }
  for (std::size_t i = 0; i < group.size(); ++i)
    for (FacePart& other : faces)
      if (!other.grouped && other.up.Dot(group[i]->up) > carried_on &&
          are_neighbours(edges, other.face, group[i]->face) &&
          off_plane(other.outlines, first.middle, first.up) < 2 * most_bow)
        other.grouped = true, group.push_back(&other);
  return group;
}

/// Rounded edges beside the group: neighbours that leave it without a kink and end little below it.
void add_roundings(NeckFaceGroup& result, const std::vector<FacePart*>& group, const EdgeFaces& edges) {
  const gp_Dir up = group.front()->up;
  const gp_Pnt middle = group.front()->middle;
  std::vector<TopoDS_Shape> taken;
  for (const FacePart* face : group)
    for (TopExp_Explorer it(face->face, TopAbs_EDGE); it.More(); it.Next()) {
      const int at = edges.FindIndex(it.Current());
      if (at == 0) continue;
      const BRepAdaptor_Curve curve(TopoDS::Edge(it.Current()));
      const gp_Pnt half = curve.Value((curve.FirstParameter() + curve.LastParameter()) / 2);
      for (const TopoDS_Shape& shape : edges(at)) {
        const TopoDS_Face other = TopoDS::Face(shape);
        if (std::any_of(group.begin(), group.end(), [&](const FacePart* f) { return f->face.IsSame(other); })) continue;
        if (std::any_of(taken.begin(), taken.end(), [&](const TopoDS_Shape& t) { return t.IsSame(other); })) continue;
        if (BRepAdaptor_Surface(other).GetType() == GeomAbs_Plane) continue;
        const GeomAPI_ProjectPointOnSurf foot(half, BRep_Tool::Surface(other));
        if (foot.NbPoints() == 0) continue;
        double u = 0, v = 0;
        foot.LowerDistanceParameters(u, v);
        const auto normal = normal_of(other, u, v);
        if (!normal || normal->Dot(up) < tangent) continue;
        const NeckOutlines outlines = outlines_of(other);
        if (outlines.empty() || off_plane(outlines, middle, up) > widest_rounding) continue;
        taken.push_back(other);
        result.rounding = std::max(result.rounding, area_of(other) / reach_of(outlines) * 2 / M_PI);
        for (const auto& outline : outlines) result.candidate.outlines.push_back(outline);
      }
    }
}

/// How far the edges of a wire miss each other where one follows the other.
double open_by(const TopoDS_Wire& wire, const TopoDS_Face& face) {
  std::vector<std::pair<gp_Pnt, gp_Pnt>> ends;
  for (BRepTools_WireExplorer edges(wire, face); edges.More(); edges.Next()) {
    const BRepAdaptor_Curve curve(edges.Current());
    ends.emplace_back(curve.Value(curve.FirstParameter()), curve.Value(curve.LastParameter()));
    if (edges.Current().Orientation() == TopAbs_REVERSED) std::swap(ends.back().first, ends.back().second);
  }
  double most = 0;
  for (std::size_t i = 0; i < ends.size(); ++i)
    most = std::max(most, ends[i].second.Distance(ends[(i + 1) % ends.size()].first));
  return most;
}

/// How far a face's edges and corners are from meeting: what their curves leave open, or their tolerance.
double open_by(const TopoDS_Face& face) {
  double most = 0;
  for (TopExp_Explorer it(face, TopAbs_WIRE); it.More(); it.Next())
    most = std::max(most, open_by(TopoDS::Wire(it.Current()), face));
  for (TopExp_Explorer it(face, TopAbs_EDGE); it.More(); it.Next())
    most = std::max(most, BRep_Tool::Tolerance(TopoDS::Edge(it.Current())));
  for (TopExp_Explorer it(face, TopAbs_VERTEX); it.More(); it.Next())
    most = std::max(most, BRep_Tool::Tolerance(TopoDS::Vertex(it.Current())));
  return most;
}

/// Whether every edge of a solid lies between two of its faces, or is a face's own seam.
bool is_closed(const TopoDS_Shape& solid, const EdgeFaces& edges) {
  for (TopExp_Explorer it(solid, TopAbs_EDGE); it.More(); it.Next()) {
    const TopoDS_Edge& edge = TopoDS::Edge(it.Current());
    if (!BRep_Tool::Degenerated(edge) && edges.FindFromKey(edge).Extent() < 2) return false;
  }
  return true;
}

double depth_below(const TopoDS_Shape& shape, const gp_Pnt& middle, const gp_Dir& up) {
  gp_Trsf level;
  level.SetTransformation(gp_Ax3(middle, up));
  Bnd_Box box;
  BRepBndLib::AddOptimal(BRepBuilderAPI_Transform(shape, level, false).Shape(), box, false, false);
  return box.IsVoid() ? 0 : -box.CornerMin().Z();
}

NeckFaceGroup group_of(const std::vector<FacePart*>& group, const std::vector<TopoDS_Shape>& solids,
                       const EdgeFaces& edges) {
  NeckFaceGroup result;
  FacePart whole = *group.front();
  for (std::size_t i = 1; i < group.size(); ++i)
    whole.outlines.insert(whole.outlines.end(), group[i]->outlines.begin(), group[i]->outlines.end());
  if (!whole.planar) set_plane(whole);
  FaceCandidate& candidate = result.candidate;
  candidate.outlines = whole.outlines;
  candidate.middle = {whole.middle.X(), whole.middle.Y(), whole.middle.Z()};
  candidate.up = {whole.up.X(), whole.up.Y(), whole.up.Z()};
  for (const FacePart* face : group) {
    candidate.area += face->area;
    candidate.depth =
        std::max(candidate.depth, depth_below(solids[static_cast<std::size_t>(face->solid)], whole.middle, whole.up));
    result.planar = result.planar && face->planar;
    result.open = std::max(result.open, open_by(face->face));
    result.closed = result.closed && is_closed(solids[static_cast<std::size_t>(face->solid)], edges);
  }
  add_roundings(result, group, edges);
  return result;
}

}  // namespace

std::vector<NeckFaceGroup> neck_faces(const TopoDS_Shape& shape, double least) {
  std::vector<TopoDS_Shape> solids;
  std::vector<FacePart> faces;
  EdgeFaces edges;
  TopExp::MapShapesAndAncestors(shape, TopAbs_EDGE, TopAbs_FACE, edges);
  for (TopExp_Explorer solid(shape, TopAbs_SOLID); solid.More(); solid.Next()) {
    solids.push_back(solid.Current());
    for (TopExp_Explorer it(solid.Current(), TopAbs_FACE); it.More(); it.Next())
      if (auto face = face_of(TopoDS::Face(it.Current()), static_cast<int>(solids.size()) - 1))
        faces.push_back(std::move(*face));
  }
  std::sort(faces.begin(), faces.end(), [](const FacePart& a, const FacePart& b) { return a.area > b.area; });
  if (faces.size() > most_faces) faces.erase(faces.begin() + most_faces, faces.end());
  std::vector<NeckFaceGroup> groups;
  for (FacePart& face : faces) {
    if (face.grouped) continue;
    const std::vector<FacePart*> group = grown(faces, face, edges);
    NeckOutlines all;
    for (const FacePart* member : group) all.insert(all.end(), member->outlines.begin(), member->outlines.end());
    if (reach_of(all) >= least) groups.push_back(group_of(group, solids, edges));
  }
  return groups;
}

}  // namespace sagitta
