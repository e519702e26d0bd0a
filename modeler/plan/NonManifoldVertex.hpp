#pragma once

/// Vertices at which the boundary of the wood would not be a manifold.

#include <vector>

#include "plan/Plan.hpp"

namespace sagitta {

/// Vertices of the plan where the boundary of the wood touches itself: along an upright line (at some height the cells
/// with wood about the vertex fall into more than one run), or at one height in a point or a level edge (wood under it
/// and wood over it, or air and air, share no cell). A solid would have an edge with four faces or a vertex with two
/// fans of faces there.
std::vector<int> non_manifold_vertices(const Plan& plan);

/// The lesser feature (a side hole before a pin before an inlay before a slot, later ones first) whose outline runs
/// through the vertex; -1 where only the board's own outline and its binding do.
int lesser_feature_at(const Plan& plan, int vertex);

}  // namespace sagitta
