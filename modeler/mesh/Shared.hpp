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

/// The same for a whole mesh whose triangles name the `face` that they are of, those of a face together: where wood
/// runs out to a point, its upper and its lower face may both leave out the point.
void turn_shared_sides(std::vector<Corners3>& triangles, const std::vector<std::int32_t>& face);

}  // namespace sagitta
