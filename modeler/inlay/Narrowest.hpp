#pragma once

/// The narrowest place of a region.

#include "polygon/Region.hpp"

namespace sagitta {

/// The narrowest place of a region, or of what is outside it. Lengths in mm.
struct Narrowest {
  double width = 1e300;
  Point p;  ///< the middle of the neck
};

/// Cosine of 120 degrees: sides whose directions are within 60 degrees of opposite face each other.
inline constexpr double facing = -0.5;

/// The least width between two stretches of outline that face each other across the region (`inside`) or across what is
/// outside it: the cosine between their directions is at most `opposite`. What tapers to a corner is no neck. Wider
/// ones than `most` are not looked for: the width is then 1e300.
Narrowest narrowest(const Region& region, bool inside, double most, double opposite = facing);

/// Whether any such width is less than `than`.
bool narrower(const Region& region, bool inside, double than);

/// The same for each side of each polygon: the least width there, up to `most`; 1e300 where it is wider. No two points
/// of a polygon that follow each other may be one.
std::vector<std::vector<double>> widths(const Region& region, bool inside, double most);

}  // namespace sagitta
