#pragma once

/// Where an open chain of lines and arcs meets a straight line, and parts of such a chain.

#include <cstddef>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// A place on a chain: a piece of it and where on the piece.
struct ChainPlace {
  std::size_t piece = 0;
  double t = 0;  ///< in [0, 1] on that piece
  Point at;
};

/// Every place where the chain meets the straight line through `on` in the direction `along`, touching or crossing, in
/// the chain's order. The place where two pieces join counts once; a piece that lies in the line gives its two ends.
std::vector<ChainPlace> meetings(const Loop& chain, Point on, Point along);

/// Those of them at which the chain changes from one side of the line to the other.
std::vector<ChainPlace> crossings(const Loop& chain, Point on, Point along);

/// The chain from one of its places to a later one; their points are kept exactly.
Loop part_of(const Loop& chain, const ChainPlace& from, const ChainPlace& to);

}  // namespace sagitta
