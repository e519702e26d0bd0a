#include "wood/Scallop.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {

double ball_ridge(double radius, double step) {
  const double half = std::min(step / 2, radius);
  return half * half / (radius + std::sqrt(radius * radius - half * half));
}

double ball_step(double radius, double ridge) { return 2 * std::sqrt(ridge * (2 * radius - ridge)); }

double ball_on_crown(double radius, double surface_radius) { return 1 / (1 / radius + 1 / surface_radius); }

double flat_stair(double surface_radius, double y, double step) {
  return ball_ridge(surface_radius, 2 * y) - ball_ridge(surface_radius, 2 * std::max(0.0, y - step));
}

double flat_step(double surface_radius, double y, double stair) {
  const double drop = ball_ridge(surface_radius, 2 * y) - stair;
  return drop <= 0 ? y : y - ball_step(surface_radius, drop) / 2;
}

}  // namespace sagitta
