#pragma once

/// Inner sides of one face's triangles that other faces' triangles have too: along a curve that is nearly straight both
/// faces may leave out the same point, and the mesh would have an edge with four triangles.

#include <array>
#include <cstdint>
#include <set>
#include <utility>
#include <vector>

namespace sagitta {

using Corners3 = std::array<std::uint32_t, 3>;
using EdgeSet = std::set<std::pair<std::uint32_t, std::uint32_t>>;  ///< the smaller index first

void add_edges(EdgeSet& edges, const Corners3& triangle);

/// Turns every inner side of a face's triangles (from index `first` on) that is among `taken`, so that none is left.
void turn_shared_sides(std::vector<Corners3>& triangles, std::size_t first, const EdgeSet& taken);

}  // namespace sagitta
