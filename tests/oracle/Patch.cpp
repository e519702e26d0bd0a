#include "oracle/Patch.hpp"

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeSolid.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepBuilderAPI_Sewing.hxx>
#include <BRepLib.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRep_Tool.hxx>
#include <GeomConvert.hxx>
#include <Geom_Curve.hxx>
#include <TColStd_Array1OfInteger.hxx>
#include <TColStd_Array1OfReal.hxx>
#include <TColStd_Array2OfReal.hxx>
#include <TColgp_Array2OfPnt.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <algorithm>
#include <array>
#include <cmath>
#include <gp_Pln.hxx>
#include <numbers>
#include <vector>

namespace sagitta::oracle {
namespace {

/// A control point of the circle section: sin and cos of the angle from the crown and the weight, homogeneous.
struct Spoke {
  double sine, cosine, weight;
};

/// Quadratic Bezier spans from -half to +half, none wider than a right angle; the spans share their end spokes.
std::vector<Spoke> spokes(double half) {
  const int spans = std::max(1, static_cast<int>(std::ceil(2 * half / (std::numbers::pi / 2))));
  const double step = half / spans;  // half of a span
  std::vector<Spoke> all;
  for (int i = 0; i <= 2 * spans; ++i) {
    const double angle = -half + i * step;
    all.push_back({std::sin(angle), std::cos(angle), i % 2 == 0 ? 1 : std::cos(step)});
  }
  return all;
}

/// Homogeneous point.
struct Control {
  double x, y, z, w;
};

Handle(Geom_BSplineSurface) surface_from(const std::vector<std::vector<Control>>& rows) {
  const int across = static_cast<int>(rows.front().size()), along = static_cast<int>(rows.size());
  TColgp_Array2OfPnt poles(1, across, 1, along);
  TColStd_Array2OfReal weights(1, across, 1, along);
  for (int j = 0; j < along; ++j)
    for (int i = 0; i < across; ++i) {
      const Control& c = rows[j][i];
      poles.SetValue(i + 1, j + 1, gp_Pnt(c.x / c.w, c.y / c.w, c.z / c.w));
      weights.SetValue(i + 1, j + 1, c.w);
    }
  const int spans = (across - 1) / 2;
  TColStd_Array1OfReal u(1, spans + 1), v(1, 2);
  TColStd_Array1OfInteger u_times(1, spans + 1), v_times(1, 2);
  for (int k = 0; k <= spans; ++k) {
    u.SetValue(k + 1, k);
    u_times.SetValue(k + 1, k == 0 || k == spans ? 3 : 2);
  }
  v.SetValue(1, 0), v.SetValue(2, 1);
  v_times.Init(along);
  return new Geom_BSplineSurface(poles, weights, u, v, u_times, v_times, 2, along - 1);
}

TopoDS_Edge edge(const TopoDS_Vertex& a, const TopoDS_Vertex& b) { return BRepBuilderAPI_MakeEdge(a, b).Edge(); }

/// The bottom's corners and edges, in order round the patch.
struct Round {
  std::array<TopoDS_Vertex, 4> corner, above;
  std::array<TopoDS_Edge, 4> low, high, post;
};

Round round_of(const Handle(Geom_BSplineSurface) & patch, double top) {
  double u0, u1, v0, v1;
  patch->Bounds(u0, u1, v0, v1);
  const std::array<gp_Pnt, 4> p{patch->Value(u0, v0), patch->Value(u1, v0), patch->Value(u1, v1), patch->Value(u0, v1)};
  const std::array<Handle(Geom_Curve), 4> curve{patch->VIso(v0), patch->UIso(u1), patch->VIso(v1), patch->UIso(u0)};
  Round r;
  for (int i = 0; i < 4; ++i) {
    r.corner[i] = BRepBuilderAPI_MakeVertex(p[i]).Vertex();
    r.above[i] = BRepBuilderAPI_MakeVertex(gp_Pnt(p[i].X(), p[i].Y(), top)).Vertex();
  }
  for (int i = 0; i < 4; ++i) {
    const int j = (i + 1) % 4;
    // Rulings are straight; sections keep their conic, which runs with u.
    if (i % 2 == 1)
      r.low[i] = edge(r.corner[i], r.corner[j]);
    else
      r.low[i] = BRepBuilderAPI_MakeEdge(curve[i], r.corner[i == 0 ? i : j], r.corner[i == 0 ? j : i]).Edge();
    r.high[i] = edge(r.above[i], r.above[j]);
    r.post[i] = edge(r.corner[i], r.above[i]);
  }
  return r;
}

TopoDS_Face plane_face(const gp_Pnt& at, const gp_Dir& normal, const std::array<TopoDS_Edge, 4>& edges) {
  BRepBuilderAPI_MakeWire wire(edges[0], edges[1], edges[2], edges[3]);
  return BRepBuilderAPI_MakeFace(gp_Pln(at, normal), wire.Wire()).Face();
}

TopoDS_Solid sewn(const std::vector<TopoDS_Face>& faces) {
  BRepBuilderAPI_Sewing sewing(1e-6);
  for (const TopoDS_Face& face : faces) sewing.Add(face);
  sewing.Perform();
  TopExp_Explorer shell(sewing.SewedShape(), TopAbs_SHELL);
  TopoDS_Solid solid = BRepBuilderAPI_MakeSolid(TopoDS::Shell(shell.Current())).Solid();
  BRepLib::OrientClosedSolid(solid);
  return solid;
}

}  // namespace

Handle(Geom_BSplineSurface)
    ruled_patch(const Surface& s, double offset, bool fallen, Wall first, Wall last, double half_angle) {
  const double fall = fallen ? s.fall_slope : 0, start = fallen ? *s.fall_start : 0, k = s.r1;
  std::vector<std::vector<Control>> rows;
  for (const Wall& wall : {first, last}) {
    const double e = s.r0 * wall.n.x + k * wall.d;  // R = e W / w all along the wall
    std::vector<Control> row;
    for (const Spoke& spoke : spokes(half_angle)) {
      const double big = spoke.weight, sine = spoke.sine, cosine = spoke.cosine;
      // The middle spoke of a span carries sin, cos over the weight; as homogeneous numbers they stand as they are.
      const double w = wall.n.x * big + wall.n.y * k * sine;
      const double x = wall.d * big - wall.n.y * s.r0 * sine;
      row.push_back({x, e * sine, (s.thickness - offset) * w - fall * (x - start * w) - e * (big - cosine), w});
    }
    rows.push_back(row);
  }
  return surface_from(rows);
}

Handle(Geom_BSplineSurface)
    quadratic_patch(const Surface& s, double offset, bool fallen, double first, double last, double half_angle) {
  const double fall = fallen ? s.fall_slope : 0, start = fallen ? *s.fall_start : 0, middle = 0.5 * (first + last);
  const std::array<std::pair<double, double>, 3> stations{
      {{first, s.radius(first)},
       {middle, s.radius(first) + s.radius_slope(first) * (last - first) / 2},
       {last, s.radius(last)}}};
  std::vector<std::vector<Control>> rows;
  for (const auto& [x, radius] : stations) {
    std::vector<Control> row;
    for (const Spoke& spoke : spokes(half_angle)) {
      const double w = spoke.weight;
      const double crown = s.thickness - offset - fall * (x - start);
      row.push_back({x * w, radius * spoke.sine, crown * w - radius * (w - spoke.cosine), w});
    }
    rows.push_back(row);
  }
  return surface_from(rows);
}

TopoDS_Solid solid_over(const Handle(Geom_BSplineSurface) & patch, double top) {
  if (patch->VDegree() > 1) {  // its sides are not plane
    const TopoDS_Face face = BRepBuilderAPI_MakeFace(patch, 1e-7).Face();
    return TopoDS::Solid(BRepPrimAPI_MakePrism(face, gp_Vec(0, 0, 2 * std::abs(top) + 10)).Shape());
  }
  const Round r = round_of(patch, top);
  std::vector<TopoDS_Face> faces{BRepBuilderAPI_MakeFace(patch, 1e-7).Face(),
                                 plane_face(gp_Pnt(0, 0, top), gp_Dir(0, 0, 1), r.high)};
  for (int i = 0; i < 4; ++i) {
    const int j = (i + 1) % 4;
    const gp_Pnt a = BRep_Tool::Pnt(r.corner[i]), b = BRep_Tool::Pnt(r.corner[j]);
    faces.push_back(
        plane_face(a, gp_Dir(b.Y() - a.Y(), a.X() - b.X(), 0), {r.low[i], r.post[j], r.high[i], r.post[i]}));
  }
  return sewn(faces);
}

double half_angle_past(const Surface& surface, double x0, double x1, double y) {
  const double least = std::min({surface.radius(x0), surface.radius(x1), surface.radius(0.5 * (x0 + x1))});
  return std::asin(std::min((y + 1) / least, 0.5 * (1 + y / least)));
}

}  // namespace sagitta::oracle
