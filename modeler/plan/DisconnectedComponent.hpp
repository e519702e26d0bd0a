#pragma once

/// Wood that nothing connects to the rest of the board.

#include <optional>

#include "plan/Plan.hpp"

namespace sagitta {

/// A cell whose wood, or whose layer over a side hole, is connected to little else of the plan's wood: what was cut
/// round it leaves a crumb that nothing holds.
struct DisconnectedCell {
  int face = 0;
  bool over_hole = false;  ///< the wood over a side hole, not that below
};

/// Nothing when all wood is connected. Wood of two cells does where its heights overlap along the edge between them.
std::optional<DisconnectedCell> disconnected_cell(const Plan& plan);

}  // namespace sagitta
