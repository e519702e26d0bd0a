#pragma once

/// Vertices at which the boundary of the wood would not be a manifold.

#include <vector>

#include "plan/Plan.hpp"

namespace sagitta {

/// Vertices of the plan at which the boundary of the wood is not a manifold: along a vertical line (at some height the
/// cells with wood around the vertex are not consecutive), or at one height in a point or a level edge (the wood below
/// and the wood above, or the air below and the air above, have no cell in common). A solid would have an edge with
/// four faces, or a vertex with two fans of faces.
std::vector<int> non_manifold_vertices(const Plan& plan);

/// The lesser feature (a side hole before a pin before an inlay before a slot, later ones first) whose outline runs
/// through the vertex; -1 where only the board's own outline and its binding do.
int lesser_feature_at(const Plan& plan, int vertex);

}  // namespace sagitta
