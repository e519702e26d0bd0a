#pragma once

#include <cmath>
#include <numbers>

namespace sagitta {

/// Angles, and an ellipse's parameters, nearer than this are one; radians.
inline constexpr double one_angle = 1e-6;

/// The same angle within [-one_angle, 2 pi - one_angle).
inline double within_turn(double angle) {
  const double full = 2 * std::numbers::pi;
  return angle - full * std::floor((angle + one_angle) / full);
}

}  // namespace sagitta
