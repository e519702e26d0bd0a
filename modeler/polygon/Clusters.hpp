#pragma once

/// Groups of boxes that are near each other.

#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// The boxes' indices in groups: two boxes nearer than `apart` (mm, in both directions) are in one group. Groups come
/// in the order of their first boxes, and the boxes of a group in their own.
std::vector<std::vector<int>> clusters(const std::vector<Box>& boxes, double apart);

}  // namespace sagitta
