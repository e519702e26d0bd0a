#pragma once

/// The heights over one edge of the plan, and the walls between them.

#include <array>
#include <vector>

#include "plan/Plan.hpp"

namespace sagitta {

/// One of the distinct heights over a plan edge.
struct Height {
  BoundingSurface bound;  ///< a level where one of the equal bounds is level
  bool used = false;      ///< some face has an edge here
  int shell_edge = -1;
};

/// A wall over a plan edge, from one height to another.
struct Wall {
  int low = 0, high = 0;  ///< indices into EdgeHeights::heights
  bool wood_left = true;
};

/// The four surfaces that may bound the wood of a cell, and which way a face that lies in them looks.
enum class Side { top, bottom, trough, vault };
inline constexpr std::array<Side, 4> sides{Side::top, Side::bottom, Side::trough, Side::vault};
inline bool looks_up(Side side) { return side == Side::top || side == Side::trough; }
const BoundingSurface& bound_of(const Cell& cell, Side side);

/// Distinct heights over a plan edge, rising, and the faces of wood beside it.
struct EdgeHeights {
  std::vector<Height> heights;
  std::vector<Wall> walls;
  /// For the sides of the cell to the left, then of the one to the right: index of the height, -1 where the cell has no
  /// such side or where the cells on both sides share that surface.
  std::array<int, 8> border{-1, -1, -1, -1, -1, -1, -1, -1};

  int border_of(Side side, bool right) const { return border[static_cast<int>(side) + (right ? 4 : 0)]; }
};

EdgeHeights heights_over(const Plan& plan, const PlanEdge& edge);

}  // namespace sagitta
