#include "solid/FormPatch.hpp"

#include <Standard_Failure.hxx>
#include <algorithm>

#include "plane/Tolerance.hpp"
#include "solid/Pcurve.hpp"

namespace sagitta {
namespace {

constexpr double aim = tolerance::confusion / 4;  ///< for pcurves, mm
constexpr double largest = 5e-6;                  ///< what a patch may leave its formula by, mm

}  // namespace

FormPatch::FormPatch(const Surface& surface, const BoundingSurface& bound, const Box& reach)
    : law_(surface), bound_(bound), chart_(chart_of(surface, bound)) {
  const ParameterBox box = std::visit([&](const auto& chart) { return chart.over(surface, reach); }, chart_);
  fitted_ = fit_patch([this](double u, double v) { return place(u, v); }, box);
  if (!(fitted_.deviation <= largest)) throw Standard_Failure("the surface is too steep to be made within 0.005 um");
}

std::array<double, 3> FormPatch::place(double u, double v) const {
  const auto [p, rise] = std::visit(
      [&](const auto& chart) {
        return std::pair{chart.at(u, v), chart.rise(v)};
      },
      chart_);
  return {p.x, p.y, foot_of(law_, bound_, p.x, p.y) + rise};
}

std::array<Jet, 2> FormPatch::parameters(const std::array<Jet, 3>& p) const {
  const Jet above = p[2] - foot_of(law_, bound_, p[0], p[1]);
  return std::visit([&](const auto& chart) { return chart.parameters(p[0], p[1], above); }, chart_);
}

Handle(Geom2d_Curve) FormPatch::pcurve(const EdgeCurve& edge, double& deviation) const {
  const HermiteSpline<2> fitted = fit_hermite_spline<2>(
      [&](double t, std::size_t span) { return parameters(edge.place(t, span)); }, edge.spans(), {2, 2}, aim);
  deviation = std::max(deviation, fitted.deviation + edge.deviation + fitted_.deviation);
  return pcurve_of(fitted);
}

}  // namespace sagitta
