#pragma once

/// The cells of a plan, from what may bound each.

#include <vector>

#include "plan/IntersectionCurves.hpp"

namespace sagitta {

/// The wood over each face of a map that is divided where heights change places: the lowest of what may bound it from
/// above, with what a side hole takes of it.
std::vector<Cell> cells_of(const Subdivision& map, const Surface& surface, const std::vector<Candidates>& candidates);

}  // namespace sagitta
