#pragma once

/// What may bound the wood over a face of the map, before heights are compared.

#include <compare>
#include <optional>
#include <set>

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
  std::optional<BoundingSurface> moved;        ///< the lowest, of Kind::offset_surface
  std::optional<BoundingSurface> level;        ///< the lowest, of Kind::level
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

/// Two bounds that are compared somewhere: a moved surface or a side hole's wall against what it may cross.
struct BoundPair {
  BoundingSurface upper, other;
  friend auto operator<=>(const BoundPair&, const BoundPair&) = default;
};

/// What may bound the wood in either of two neighbours, or twice the same for one: the pairs whose order may change.
std::set<BoundPair> pairs_of(const Surface& surface, const Candidates& left, const Candidates& right);

}  // namespace sagitta
