#pragma once

/// Angles brought within one turn, for what winds around an axis: round walls and ellipses.

#include <cmath>
#include <numbers>

#include "plane/Tolerance.hpp"

namespace sagitta {

/// Angles, and an ellipse's parameters, nearer than this are one; radians.
inline constexpr double one_angle = tolerance::direction;

/// The same angle within [-one_angle, 2 pi - one_angle).
inline double within_turn(double angle) {
  const double full = 2 * std::numbers::pi;
  return angle - full * std::floor((angle + one_angle) / full);
}

}  // namespace sagitta
