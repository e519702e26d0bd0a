#pragma once

/// Groups of boxes that are near each other.

#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// The connected components of boxes, as indices: two boxes closer than `apart` (mm, along x and along y) are
/// connected. Components are in the order of their first boxes, the boxes of each in rising order.
std::vector<std::vector<int>> clusters(const std::vector<Box>& boxes, double apart);

}  // namespace sagitta
