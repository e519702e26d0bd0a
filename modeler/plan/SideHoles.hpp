#pragma once

#include "plan/Plan.hpp"

namespace sagitta {

/// Gives the plan the side dots' holes, each marked clear or not. Faults: a hole that leaves no wood above or below it,
/// runs past an end of the edge, or comes out on the other side.
Faults add_side_holes(Plan& plan, const Board& board, const Layout& layout);

}  // namespace sagitta
