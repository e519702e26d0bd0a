#pragma once

/// The heights over one edge of the plan, and the walls between them.

#include <array>
#include <vector>

#include "plan/Plan.hpp"

namespace sagitta {

/// One of the distinct heights over a plan edge.
struct Height {
  Bound bound;        ///< a level where one of the equal bounds is level
  bool used = false;  ///< some face has an edge here
  int shell_edge = -1;
};

/// A wall over a plan edge, from one height to another.
struct Wall {
  int low = 0, high = 0;  ///< indices into EdgeHeights::heights
  bool wood_left = true;
};

/// Distinct heights over a plan edge, rising, and the faces of wood beside it.
struct EdgeHeights {
  std::vector<Height> heights;
  std::vector<Wall> walls;
  /// For left top, left bottom, right top, right bottom: index of the height, -1 where there is no wood or where the
  /// cells on both sides share that surface.
  std::array<int, 4> border{-1, -1, -1, -1};
};

EdgeHeights heights_over(const Plan& plan, const PlanEdge& edge);

}  // namespace sagitta
