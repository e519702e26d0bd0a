#pragma once

#include "plan/Plan.hpp"

namespace sagitta {

/// Gives the plan the side dots' holes, each marked clear or not. Layout and surface have seen to it that they fit in
/// the edge.
void add_side_holes(Plan& plan, const Board& board, const Layout& layout);

}  // namespace sagitta
