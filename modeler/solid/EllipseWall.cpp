#include "solid/EllipseWall.hpp"

#include <Geom2d_Line.hxx>
#include <Geom_Ellipse.hxx>

#include "solid/Pcurve.hpp"

namespace sagitta {

EllipseWall::EllipseWall(const Shell& shell, const ShellFace& face)
    : shell_(shell),
      ellipse_(*face.ellipse),
      arc_(*face.ellipse, face.run),
      first_(face.run.front().a),
      last_(face.run.back().b) {
  if (arc_.reversed) std::swap(first_, last_);
  const Handle(Geom_Ellipse) foot = new Geom_Ellipse(arc_.axes(0), arc_.major(), arc_.minor());
  surface_ = new Geom_SurfaceOfLinearExtrusion(foot, gp::DZ());
}

Handle(Geom2d_Curve) EllipseWall::pcurve(const ShellEdge& edge, const EdgeCurve& curve) const {
  if (edge.upright) {
    const ShellVertex& foot = shell_.vertices[edge.from];
    return new Geom2d_Line(gp_Pnt2d(foot.p == first_ ? arc_.first : arc_.last, foot.z), gp_Dir2d(0, 1));
  }
  const Handle(Geom_BSplineCurve) spline = Handle(Geom_BSplineCurve)::DownCast(curve.curve);
  if (!spline.IsNull()) return height_pcurve(spline, 0);
  return new Geom2d_Line(gp_Pnt2d(0, edge.bound.value), gp_Dir2d(1, 0));
}

}  // namespace sagitta
