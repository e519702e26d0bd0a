#include "solid/CompositeWall.hpp"

#include <Geom2d_Line.hxx>
#include <Geom_BSplineSurface.hxx>
#include <algorithm>

#include "solid/EllipseRun.hpp"
#include "solid/Pcurve.hpp"

namespace sagitta {
namespace {

constexpr double spare = 0.01;  // mm; a moved surface may bulge between the places looked at

/// The spline, lifted from one height to another.
Handle(Geom_Surface) risen(const Handle(Geom_BSplineCurve) & foot, double low, double high) {
  const int n = foot->NbPoles();
  TColgp_Array2OfPnt poles(1, 2, 1, n);
  for (int i = 1; i <= n; ++i) {
    const gp_Pnt p = foot->Pole(i);
    poles(1, i) = gp_Pnt(p.X(), p.Y(), low);
    poles(2, i) = gp_Pnt(p.X(), p.Y(), high);
  }
  TColStd_Array1OfReal along(1, foot->NbKnots()), up(1, 2);
  TColStd_Array1OfInteger along_multiplicities(1, foot->NbKnots()), up_multiplicities(1, 2);
  foot->Knots(along);
  foot->Multiplicities(along_multiplicities);
  up(1) = low;
  up(2) = high;
  up_multiplicities.Init(2);
  return new Geom_BSplineSurface(poles, up, along, up_multiplicities, along_multiplicities, 1, foot->Degree());
}

}  // namespace

CompositeWall::CompositeWall(const Shell& shell, const ShellFace& face) : shell_(shell) {
  double low = 1e300, high = -1e300;
  for (const Coedge use : face.loops[0]) {
    const ShellEdge& edge = shell.edges[use.edge];
    if (edge.upright) continue;
    for (const Point p : shell.places(edge)) {
      const double z = height(shell.plan.surface, edge.bound, p);
      low = std::min(low, z);
      high = std::max(high, z);
    }
  }
  const EdgeCurve foot = face.ellipse ? over_ellipse({}, {BoundingSurface::Kind::level, 0}, {*face.ellipse, face.run})
                                      : level_run(face.run, 0);
  reversed_ = foot.reversed;
  start_ = reversed_ ? face.run.back().b : face.run.front().a;
  deviation_ = foot.deviation;
  first_ = foot.first;
  last_ = foot.last;
  for (const double t : {first_, last_}) {
    const gp_Pnt end = foot.curve->Value(t);
    ends_.push_back({end.X(), end.Y()});
  }
  surface_ = risen(Handle(Geom_BSplineCurve)::DownCast(foot.curve), low - spare, high + spare);
}

double CompositeWall::off(Point p) const { return std::min(distance(p, ends_[0]), distance(p, ends_[1])); }

Handle(Geom2d_Curve) CompositeWall::pcurve(const ShellEdge& edge, const EdgeCurve& curve) const {
  if (!edge.upright) {
    Handle(Geom2d_BSplineCurve) along = height_pcurve(Handle(Geom_BSplineCurve)::DownCast(curve.curve), 0);
    for (int i = 1; i <= along->NbPoles(); ++i) along->SetPole(i, gp_Pnt2d(along->Pole(i).Y(), along->Pole(i).X()));
    return Handle(Geom2d_Curve)(along);
  }
  const ShellVertex& foot = shell_.vertices[edge.from];
  return new Geom2d_Line(gp_Pnt2d(foot.z, foot.p == start_ ? first_ : last_), gp_Dir2d(1, 0));
}

}  // namespace sagitta
