#pragma once

#include "panels/CheckState.hpp"

namespace sagitta::viewer {

/// What would go wrong with the board as it stands, the costliest first. A press flies to the place; the finding that
/// is marked offers its decision and, where the remedy is a number, the remedy itself.
void draw_findings(const CheckState& state);

/// ": 1 stop, 2 looks"; "" when there is nothing.
std::string finding_count(const Results& results);

}  // namespace sagitta::viewer
