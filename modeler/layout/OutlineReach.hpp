#pragma once

/// Where a straight line crosses an outline.

#include <utility>

#include "plane/Plane.hpp"

namespace sagitta {

/// Distances along the line p + t d (d a unit vector) at which it meets the outline: the least and the greatest; the
/// first greater than the second where it does not. mm.
std::pair<double, double> reach_in(const Loop& outline, Point p, Point d);

}  // namespace sagitta
