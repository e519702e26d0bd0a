#pragma once

/// The Hausdorff distance of two regions.

#include "polygon/Region.hpp"

namespace sagitta {

/// The Hausdorff distance of two regions (mm): the largest distance from a point of one to the other; and the point
/// where it occurs.
struct HausdorffDistance {
  double distance = 0;
  Point at;
};
/// `made` must not be empty.
HausdorffDistance hausdorff_distance(const Region& drawn, const Region& made);
/// The same where what is lost of the drawing, `without(drawn, made)`, and what is added to it, `without(made, drawn)`,
/// are known.
HausdorffDistance hausdorff_distance(const Region& drawn, const Region& made, const Region& lost, const Region& added);

}  // namespace sagitta
