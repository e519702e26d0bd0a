#include "solid/Height.hpp"

namespace sagitta {

Jet height(const Surface& surface, const BoundingSurface& bound, Jet x, Jet y) {
  if (bound.kind == BoundingSurface::Kind::level) return constant(bound.value);
  if (bound.form != 0) return height_over(surface, bound, x, y);
  const double slope = bound.fallen ? surface.fall_slope : 0, start = bound.fallen ? *surface.fall_start : 0;
  const Jet crown = (surface.thickness - bound.value + slope * start) - slope * x;
  if (surface.flat) return crown;
  const Jet radius = surface.r0 + x * (surface.r1 + surface.r2 * x);
  return crown - y * y / (radius + sqrt((radius - y) * (radius + y)));
}

}  // namespace sagitta
