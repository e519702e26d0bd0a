#pragma once

/// A region divided into trapezoids.

#include <vector>

#include "polygon/Region.hpp"

namespace sagitta::viewer {

/// A piece of a region between two places along the board: from `low` to `high` across, at each end. mm.
struct Slab {
  double a = 0, b = 0;
  double low_a = 0, high_a = 0, low_b = 0, high_b = 0;
};

/// The region cut across at each of its corners: every slab has straight sides.
std::vector<Slab> slabs(const Region& region);

}  // namespace sagitta::viewer
