#pragma once

/// The placement of a figure on the board: rotation, mirror and translation.

#include "polygon/Region.hpp"

namespace sagitta {

/// Where a figure lies: turned about its own middle, mirrored in y for a left-handed board, and moved.
struct Placement {
  double turn = 0;  ///< radians
  bool mirrored = false;
  Point centre;

  Point operator()(Point p) const;
  Loops operator()(const Loops& loops) const;
  Region operator()(const Region& region) const;
  /// From the board's frame into the figure's own.
  Region back(const Region& region) const;
};

}  // namespace sagitta
