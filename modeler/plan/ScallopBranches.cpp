#include "plan/ScallopBranches.hpp"

#include <algorithm>

#include "plan/Roots.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {

ScallopBranches::ScallopBranches(const SurfacePair& meeting)
    : meeting_(meeting), space_(meeting.surface.scallops[static_cast<std::size_t>(meeting.upper.form - 1)]) {}

/// Of the gap, but for the scallop itself: that of the playing surface against a level. D_x = R' (1 - R / sqrt(R^2 -
/// y^2)).
double ScallopBranches::slope_along(double x, double y) const {
  const Surface& surface = meeting_.surface;
  if (meeting_.other.kind != BoundingSurface::Kind::level) return 0;
  const double fall = meeting_.upper.fallen ? surface.fall_slope : 0;
  if (surface.flat) return -fall;
  const double r = surface.radius(x), root = std::sqrt((r - y) * (r + y));
  return -fall + surface.radius_slope(x) * y * y / (root * (r + root));
}

// The scallop's slope, depth pi sin(2 pi s) / width, equals the playing surface's: solved by repeated substitution, as
// that changes by far less than its own size within a space.
double ScallopBranches::border(int i, double y) const {
  constexpr double turn = 2 * std::numbers::pi;
  if (i == 0 || i == branches) return space_.x(i / branches, y);
  double s = i == 1 ? 0 : i == 2 ? 0.5 : 1;
  constexpr int rounds = 20;
  for (int k = 0; k < rounds; ++k) {
    const double slope = slope_along(space_.x(s, y), y) * space_.width(y) / (space_.depth * std::numbers::pi);
    const double lean = std::asin(std::clamp(slope, -1.0, 1.0)) / turn, before = s;
    s = i == 1 ? std::max(0.0, lean) : i == 2 ? 0.5 - lean : 1 + std::min(0.0, lean);
    if (std::abs(s - before) <= tolerance::share) break;
  }
  return space_.x(s, y);
}

std::optional<double> ScallopBranches::x(int branch, double y) const {
  const double low = border(branch, y), high = border(branch + 1, y);
  const auto gap = [&](double x) { return meeting_.gap({x, y}); };
  return high > low ? root_between(gap, low, high) : std::nullopt;
}

double saddle_of(const SurfacePair& meeting) {
  const double x = ScallopBranches(meeting).border(2, 0);
  return height(meeting.surface, meeting.upper, {x, 0});
}

}  // namespace sagitta
