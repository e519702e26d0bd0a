#pragma once

/// Where heights change places: edges of the plan are cut where two heights cross or touch on them, and cells in which
/// a level floor, the playing surface moved down and a side hole's wall meet are divided along the intersection curves.

#include <optional>
#include <set>
#include <vector>

#include "plan/Plan.hpp"

namespace sagitta {

/// What may bound a face before heights are compared: the lowest moved surface, the lowest level floor, and the roof of
/// a hole from below.
struct Candidates {
  bool wood = false;
  std::optional<BoundingSurface> moved;        ///< Bound::Kind::arc
  std::optional<BoundingSurface> level;        ///< Bound::Kind::level
  int moved_feature = -1, level_feature = -1;  ///< which cut each comes from; -1: none
  double bottom = 0;                           ///< height of the bottom; above 0 over a pin
  std::optional<BoundingSurface> trough;       ///< of a side hole that passes here
  int hole_feature = -1;
};

/// The upper half of the hole whose lower half this is.
inline BoundingSurface vault_over(BoundingSurface trough) {
  trough.kind = BoundingSurface::Kind::vault;
  return trough;
}

/// Cuts and divides `map`; `candidates` (one a face) is re-made for the new faces. Afterwards no two heights change
/// places within an edge or a cell. Returns the side holes that something crosses a hair beside where their wall stands
/// upright: there the division does not hold.
std::set<Tunnel> divide_at_intersections(Subdivision& map, std::vector<Candidates>& candidates, const Surface& surface);

}  // namespace sagitta
