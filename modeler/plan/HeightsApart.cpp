#include "plan/HeightsApart.hpp"

#include <algorithm>
#include <cmath>

#include "plane/Tolerance.hpp"

namespace sagitta {

bool are_apart(const Surface& surface, const BoundingSurface& upper, const BoundingSurface& other, const Box& box) {
  const bool plain = upper.kind == BoundingSurface::Kind::offset_surface && upper.form == 0 &&
                     other.kind == BoundingSurface::Kind::level && surface.r2 == 0;
  if (!plain) return false;
  const std::pair<double, double> crown =
      std::minmax({crown_of(surface, upper, box.low.x), crown_of(surface, upper, box.high.x)});
  const std::pair<double, double> radius = std::minmax({surface.radius(box.low.x), surface.radius(box.high.x)});
  const double outer = std::max(std::abs(box.low.y), std::abs(box.high.y));
  const double inner = box.low.y <= 0 && box.high.y >= 0 ? 0 : std::min(std::abs(box.low.y), std::abs(box.high.y));
  const auto drop = [&](double r, double y) {
    return surface.flat ? 0 : y * y / (r + std::sqrt(std::max(0.0, (r - y) * (r + y))));
  };
  constexpr double clear = 2 * tolerance::height;
  return crown.first - drop(radius.first, outer) > other.value + clear ||
         crown.second - drop(radius.second, inner) < other.value - clear;
}

}  // namespace sagitta
