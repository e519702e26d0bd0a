#include "surface/Surface.hpp"

#include <algorithm>
#include <cmath>

#include "layout/LastFret.hpp"
namespace sagitta {
namespace {

void set_linear(Surface& surface, double at_nut, double at_end, double end) {
  surface.r0 = at_nut;
  surface.r1 = (at_end - at_nut) / end;
}

/// R = w^2/8h + h/2 with w = 2 (half + slope x) and h the drop at the nut's edge: the edge keeps its height.
void set_even_edge(Surface& surface, double at_nut, const Layout& layout) {
  surface.r0 = at_nut;
  const double half = layout.half_width_at_nut, slope = layout.half_width_slope;
  const double h = surface.drop(0, half);
  surface.r1 = half * slope / h;
  surface.r2 = slope * slope / (2 * h);
}

}  // namespace

double Surface::crown(double x) const {
  return fall_start && x > *fall_start ? thickness - fall_slope * (x - *fall_start) : thickness;
}

double Surface::drop(double x, double y) const {
  if (flat) return 0;
  const double r = radius(x);
  return y * y / (r + std::sqrt(std::max(0.0, (r - y) * (r + y))));
}

bool Surface::exists(double x, double y) const {
  if (flat) return true;
  return radius(x) > std::abs(y);
}

Surface surface_of(const Board& board, const Layout& layout) {
  const SurfaceSpec& spec = board.surface;
  Surface surface;
  surface.thickness = board.board.thickness;
  surface.fall_start = layout.fall_start;
  surface.fall_slope = layout.fall_slope;
  const double at_nut = spec.radius_at_nut.value_or(0);
  switch (spec.profile) {
    case Profile::flat:
      surface.flat = true;
      break;
    case Profile::single:
      surface.r0 = at_nut;
      break;
    case Profile::compound:
      set_linear(surface, at_nut, spec.radius_at_heel.value_or(at_nut),
                 spec.heel_at == HeelAt::heel ? layout.heel_end : last_fret(layout).middle.x);
      break;
    case Profile::string_line:
      surface.r0 = at_nut;
      surface.r1 = at_nut * layout.spread_slope / layout.spread_at_nut;
      break;
    case Profile::even_edge:
      set_even_edge(surface, at_nut, layout);
      break;
  }
  return surface;
}

}  // namespace sagitta
