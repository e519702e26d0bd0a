#include "solid/RoundWall.hpp"

#include <Geom2d_Line.hxx>
#include <algorithm>
#include <gp_Ax3.hxx>

#include "plane/Tolerance.hpp"
#include "solid/Pcurve.hpp"
#include "solid/WithinTurn.hpp"

namespace sagitta {
namespace {

double counter_clockwise_start(const CurveSegment& segment) {
  return segment.sweep < 0 ? segment.start + segment.sweep : segment.start;
}

constexpr double aim = tolerance::confusion;  ///< for pcurves, mm on the wall

}  // namespace

RoundWall::RoundWall(const Shell& shell, const ShellFace& face) : shell_(shell), centre_(face.segment.centre) {
  std::vector<std::pair<double, double>> arcs;  // start and sweep, from the x axis
  for (const Coedge use : face.loops[0]) {
    const ShellEdge& edge = shell.edges[use.edge];
    if (!edge.upright)
      arcs.emplace_back(within_turn(counter_clockwise_start(edge.segment)), std::abs(edge.segment.sweep));
  }
  for (const auto& [start, sweep] : arcs) {
    const bool first = std::none_of(arcs.begin(), arcs.end(), [&](const auto& other) {
      const double into = within_turn(start - other.first);
      return into > one_angle && into < other.second + one_angle;
    });
    if (first) start_ = start;
  }
  const gp_Ax3 axes(gp_Pnt(centre_.x, centre_.y, 0), gp::DZ(), gp_Dir(std::cos(start_), std::sin(start_), 0));
  cylinder_ = new Geom_CylindricalSurface(axes, face.segment.radius);
}

double RoundWall::angle(double from_x_axis) const { return within_turn(from_x_axis - start_); }

/// The angle from the middle of the curve's own reach, so that it never meets the turn's end.
Handle(Geom2d_Curve) RoundWall::across_hole(const EdgeCurve& curve, double& deviation) const {
  const std::array<Jet, 3> half = curve.place((curve.first + curve.last) / 2, 0);
  const double middle = std::atan2(half[1].v - centre_.y, half[0].v - centre_.x);
  const double c = std::cos(middle), s = std::sin(middle), from = angle(middle);
  const HermiteSpline<2> fitted = fit_hermite_spline<2>(
      [&](double t, std::size_t span) {
        const std::array<Jet, 3> p = curve.place(t, span);
        const Jet x = p[0] - constant(centre_.x), y = p[1] - constant(centre_.y);
        return std::array<Jet, 2>{from + atan2(c * y - s * x, c * x + s * y), p[2]};
      },
      curve.spans(), {cylinder_->Radius(), 1}, aim);
  deviation += fitted.deviation;
  return pcurve_of(fitted);
}

Handle(Geom2d_Curve) RoundWall::pcurve(const ShellEdge& edge, const EdgeCurve& curve, double& deviation) const {
  if (edge.upright) {
    const ShellVertex& foot = shell_.vertices[edge.from];
    const Point d = foot.p - centre_;
    return new Geom2d_Line(gp_Pnt2d(angle(std::atan2(d.y, d.x)), foot.z), gp_Dir2d(0, 1));
  }
  const double from = angle(counter_clockwise_start(edge.segment));
  if (edge.bound.round()) return across_hole(curve, deviation);
  const Handle(Geom_BSplineCurve) spline = Handle(Geom_BSplineCurve)::DownCast(curve.curve);
  if (!spline.IsNull()) return height_pcurve(spline, from);
  return new Geom2d_Line(gp_Pnt2d(from, edge.bound.value), gp_Dir2d(1, 0));
}

}  // namespace sagitta
