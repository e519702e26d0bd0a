#pragma once

/// Intersection curves of the bounding surfaces: edges of the plan are split where two heights are equal on them, and
/// cells in which a level floor, the offset playing surface and a side hole's wall intersect are split along the
/// intersection curves.

#include <set>
#include <vector>

#include "plan/Candidates.hpp"

namespace sagitta {

/// Splits the edges and faces of `map`; `candidates` (one for each face) is made again for the new faces. Afterwards
/// the order of two heights is the same everywhere in an edge or a cell. Returns the side holes whose wall something
/// intersects within tolerance of the cylinder's silhouette: there the order is not sure.
std::set<Tunnel> divide_at_intersections(Subdivision& map, std::vector<Candidates>& candidates, const Surface& surface);

}  // namespace sagitta
