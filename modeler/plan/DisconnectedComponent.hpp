#pragma once

/// Wood that nothing connects to the rest of the board.

#include <optional>

#include "plan/Plan.hpp"

namespace sagitta {

/// A cell of a small connected component of the wood: nothing connects it to the rest of the board, so it would fall
/// out. `over_hole`: the layer of wood over a side hole.
struct DisconnectedCell {
  int face = 0;
  bool over_hole = false;  ///< the wood over a side hole, not that below
};

/// Nothing when all wood is connected. The wood of two cells is connected where its heights overlap along their common
/// edge.
std::optional<DisconnectedCell> disconnected_cell(const Plan& plan);

}  // namespace sagitta
