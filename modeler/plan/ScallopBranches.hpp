#pragma once

/// Where a scalloped space meets a floor: the branches of that curve.

#include <array>
#include <optional>

#include "plan/BoundingSurface.hpp"

namespace sagitta {

/// Along x, at each y, the gap between a scallop and a level floor or the moved playing surface rises and falls between
/// at most three places: a crest near each land, where the playing surface itself rises or falls along the board, and
/// the trough between them. Between two of these places it is monotone, so each of the four branches of the curve has
/// one x for a y.
class ScallopBranches {
 public:
  static constexpr int branches = 4;
  explicit ScallopBranches(const SurfacePair& meeting);

  /// The x where branch i begins and branch i - 1 ends; 0 and 4 are the lands.
  double border(int i, double y) const;
  /// The x of a branch at y; none where it has no point there.
  std::optional<double> x(int branch, double y) const;

 private:
  double slope_along(double x, double y) const;

  const SurfacePair& meeting_;
  const ScallopedSpace& space_;
};

/// Height of a scallop's trough where it crosses the centre line. mm.
double saddle_of(const SurfacePair& meeting);

}  // namespace sagitta
