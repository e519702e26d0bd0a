#include "plan/BoundingSurface.hpp"

namespace sagitta {

BoundingSurface roll_along(const Surface& surface, int edge, double value) {
  const WorkedEdge& worked = surface.worked_edges[static_cast<std::size_t>(edge)];
  const double length = std::hypot(1, worked.slope);  // across is measured square to the axis, the roll along y
  const Tunnel tunnel{-worked.slope / length, worked.side / length, (worked.at - worked.roll) / length,
                      worked.roll / length};
  return {BoundingSurface::Kind::roll, value, false, tunnel, edge};
}

double height(const Surface& surface, const BoundingSurface& bound, Point p) {
  const Tunnel& tunnel = bound.tunnel;
  switch (bound.kind) {
    case BoundingSurface::Kind::trough:
      return bound.value - tunnel.half_height(tunnel.across(p));
    case BoundingSurface::Kind::vault:
      return bound.value + tunnel.half_height(tunnel.across(p));
    case BoundingSurface::Kind::roll:
      return axis_of(surface, bound, p.x) +
             rise_of(surface, bound) / tunnel.radius * tunnel.half_height(tunnel.across(p));
    case BoundingSurface::Kind::offset_surface:
      break;
    case BoundingSurface::Kind::none:
    case BoundingSurface::Kind::level:
      return bound.value;
  }
  if (bound.form < 0) return height_over(surface, bound, p.x, p.y);
  const double fall = bound.fallen ? surface.fall_slope * (p.x - *surface.fall_start) : 0;
  const double whole = surface.thickness - fall - surface.drop(p.x, p.y) - bound.value;
  return bound.form == 0 ? whole : whole - surface.scallops[static_cast<std::size_t>(bound.form - 1)].below(p.x, p.y);
}

}  // namespace sagitta
