#pragma once

/// A cut of the builder's own as the clearing cutter leaves it. Lengths in mm, in the board's frame.

#include <optional>

#include "board/FeatureId.hpp"
#include "plane/Ellipse.hpp"
#include "plane/RoundedPolygon.hpp"
#include "polygon/Region.hpp"

namespace sagitta {

/// Every place that the cutter covers while it stays within the shape; without such a cutter the shape itself.
struct FittedCut {
  int cut = 0;  ///< index into Board::cuts
  Loops outlines;
  std::optional<RoundedPolygon> shape;  ///< where it is convex with round corners
  std::optional<Ellipse> ellipse;       ///< where its outline is one: `outlines` is that within tolerance::vertex
  double departure = 0;                 ///< how far the cutter stays away from the sharpest corner of the shape
  Point departure_at;                   ///< where that is
  friend bool operator==(const FittedCut&, const FittedCut&) = default;
};

inline FeatureId id_of(const FittedCut& cut) { return {.kind = FeatureId::Kind::cut, .index = cut.cut}; }

/// Whether p lies within it.
bool covers(const FittedCut& cut, Point p);

}  // namespace sagitta
