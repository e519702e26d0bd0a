#pragma once

/// Intersection curves of the bounding surfaces: edges of the plan are split where two heights are equal on them, and
/// cells in which a level floor, the offset playing surface and a side hole's wall intersect are split along the
/// intersection curves.

#include <optional>
#include <set>
#include <vector>

#include "plan/Plan.hpp"

namespace sagitta {

/// The surfaces that can bound a face, before their heights are compared: the lowest offset surface, the lowest level
/// floor, and a pin's hole from below.
struct Candidates {
  /// A form of the playing surface other than itself, and the feature that makes it.
  struct Form {
    BoundingSurface bound;
    int feature = -1;
  };
  bool wood = false;
  std::optional<BoundingSurface> moved;        ///< Bound::Kind::arc
  std::optional<BoundingSurface> level;        ///< Bound::Kind::level
  int moved_feature = -1, level_feature = -1;  ///< which cut each comes from; -1: none
  double bottom = 0;                           ///< height of the bottom; above 0 over a pin
  int bottom_feature = -1;                     ///< which cut from below it comes from; -1: none
  std::optional<BoundingSurface> trough;       ///< of a side hole that passes here
  int hole_feature = -1;
  std::vector<Form> forms;  ///< scallops and worked edges; where there are any, the playing surface itself is not
};

/// The upper half of the hole whose lower half this is.
inline BoundingSurface vault_over(BoundingSurface trough) {
  trough.kind = BoundingSurface::Kind::vault;
  return trough;
}

/// Splits the edges and faces of `map`; `candidates` (one for each face) is made again for the new faces. Afterwards
/// the order of two heights is the same everywhere in an edge or a cell. Returns the side holes whose wall something
/// intersects within tolerance of the cylinder's silhouette: there the order is not sure.
std::set<Tunnel> divide_at_intersections(Subdivision& map, std::vector<Candidates>& candidates, const Surface& surface);

}  // namespace sagitta
