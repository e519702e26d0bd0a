#include "solid/FormPatch.hpp"

#include <Standard_Failure.hxx>
#include <algorithm>

#include "plane/Tolerance.hpp"
#include "solid/Pcurve.hpp"

namespace sagitta {
namespace {

constexpr double aim = tolerance::confusion / 4;  ///< for pcurves, mm
constexpr double largest = 5e-6;                  ///< what a patch may leave its formula by, mm
/// What a patch is drawn larger than its face, of its length and of its width.
constexpr double margin = 0.01;

using Kind = BoundingSurface::Kind;

const WorkedEdge& edge_of(const Surface& surface, const BoundingSurface& bound) {
  return surface.worked_edges[static_cast<std::size_t>(bound.kind == Kind::roll ? bound.form : -1 - bound.form)];
}

const ScallopedSpace& space_of(const Surface& surface, const BoundingSurface& bound) {
  return surface.scallops[static_cast<std::size_t>(bound.form - 1)];
}

}  // namespace

FormPatch::FormPatch(const Surface& surface, const BoundingSurface& bound, const Box& reach)
    : law_(surface), bound_(bound) {
  if (bound.scalloped()) length_ = space_of(surface, bound).width(0.0);
  fitted_ = fit_patch([this](double u, double v) { return place(u, v); }, parameters_over(reach));
  if (!(fitted_.deviation <= largest)) throw Standard_Failure("the surface is too steep to be made within 0.005 um");
}

std::array<double, 3> FormPatch::place(double u, double v) const {
  if (bound_.scalloped()) {
    const double x = space_of(law_, bound_).x(u / length_, v);
    return {x, v, height_over(law_, bound_, x, v)};
  }
  const WorkedEdge& edge = edge_of(law_, bound_);
  if (bound_.kind != Kind::roll) {
    const double y = v + edge.side * edge.reach(u);
    return {u, y, height_over(law_, bound_, u, y)};
  }
  const double angle = v / edge.roll;
  return {u, edge.side * (edge.reach(u) - edge.roll) + edge.roll * std::sin(angle),
          axis_of(law_, bound_, u) + edge.roll * std::cos(angle)};
}

std::array<Jet, 2> FormPatch::parameters(const std::array<Jet, 3>& p) const {
  if (bound_.scalloped()) return {length_ * space_of(law_, bound_).share(p[0], p[1]), p[1]};
  const WorkedEdge& edge = edge_of(law_, bound_);
  if (bound_.kind != Kind::roll) return {p[0], p[1] - double(edge.side) * edge.reach(p[0])};
  const Jet across = p[1] - double(edge.side) * (edge.reach(p[0]) - Jet{edge.roll, 0, 0});
  return {p[0], edge.roll * atan2(across, p[2] - axis_of(law_, bound_, p[0]))};
}

ParameterBox FormPatch::parameters_over(const Box& reach) const {
  const double aside = margin * (reach.high.x - reach.low.x), wide = margin * (reach.high.y - reach.low.y);
  if (bound_.scalloped()) {
    double most = std::max(std::abs(reach.low.y), std::abs(reach.high.y));
    if (!law_.flat) {  // no further than the playing surface reaches
      const double x = reach.low.x, least = std::min(law_.radius(x), law_.radius(reach.high.x));
      wide < (least - most) / 2 ? most += wide : most += (least - most) / 2;
    }
    return {-margin * length_, (1 + margin) * length_, std::max(reach.low.y - wide, -most),
            std::min(reach.high.y + wide, most)};
  }
  const WorkedEdge& edge = edge_of(law_, bound_);
  const double low = reach.low.x - aside, high = reach.high.x + aside;
  double begin = 0;  // how far inside the edge its face begins
  for (const double x : {reach.low.x, (reach.low.x + reach.high.x) / 2, reach.high.x})
    begin = std::max(begin, edge.reach(x) - law_.begins(edge, x));
  if (bound_.kind != Kind::roll)
    return edge.side > 0 ? ParameterBox{low, high, -(1 + margin) * begin, margin * begin}
                         : ParameterBox{low, high, -margin * begin, (1 + margin) * begin};
  const double from = std::asin(std::clamp((edge.roll - begin) / edge.roll, -1.0, 1.0)) - margin;
  const double to = std::numbers::pi / 2 + margin;
  return edge.side > 0 ? ParameterBox{low, high, edge.roll * from, edge.roll * to}
                       : ParameterBox{low, high, -edge.roll * to, -edge.roll * from};
}

Handle(Geom2d_Curve) FormPatch::pcurve(const EdgeCurve& edge, double& deviation) const {
  const HermiteSpline<2> fitted = fit_hermite_spline<2>(
      [&](double t, std::size_t span) { return parameters(edge.place(t, span)); }, edge.spans(), {2, 2}, aim);
  deviation = std::max(deviation, fitted.deviation + edge.deviation + fitted_.deviation);
  return pcurve_of(fitted);
}

}  // namespace sagitta
