#include "solid/HoleWall.hpp"

#include <gp_Ax3.hxx>

#include "plane/Tolerance.hpp"
#include "solid/Pcurve.hpp"

namespace sagitta {
namespace {

constexpr double aim = tolerance::confusion;  ///< for pcurves, mm on the wall

}  // namespace

// The cylinder's x axis lies level, to the left of the way in for the vault and to the right for the trough, so that
// the half turn over the crown, or under the bottom, is [0, pi].
HoleWall::HoleWall(const BoundingSurface& bound)
    : bound_(bound), sense_(bound.kind == BoundingSurface::Kind::vault ? 1 : -1) {
  const Tunnel& tunnel = bound.tunnel;
  const gp_Pnt middle(tunnel.offset * tunnel.nx, tunnel.offset * tunnel.ny, bound.value);
  const gp_Dir inward(tunnel.ny, -tunnel.nx, 0), left(tunnel.nx, tunnel.ny, 0);
  cylinder_ = new Geom_CylindricalSurface(gp_Ax3(middle, inward, sense_ > 0 ? left : left.Reversed()), tunnel.radius);
}

Handle(Geom2d_Curve) HoleWall::pcurve(const EdgeCurve& edge, double& deviation) const {
  const Tunnel& tunnel = bound_.tunnel;
  const HermiteSpline<2> fitted = fit_hermite_spline<2>(
      [&](double t, std::size_t span) {
        const std::array<Jet, 3> p = edge.place(t, span);
        const Jet across = sense_ * (tunnel.nx * p[0] + tunnel.ny * p[1] - constant(tunnel.offset));
        const Jet rise = sense_ * (p[2] - constant(bound_.value));
        // measured from the crown: the sides may lie a rounding beyond the half turn
        const Jet angle = std::numbers::pi / 2 + atan2(-1 * across, rise);
        return std::array<Jet, 2>{angle, tunnel.ny * p[0] - tunnel.nx * p[1]};
      },
      edge.spans(), {tunnel.radius, 1}, aim);
  deviation = std::max(deviation, fitted.deviation + edge.deviation);
  return pcurve_of(fitted);
}

}  // namespace sagitta
