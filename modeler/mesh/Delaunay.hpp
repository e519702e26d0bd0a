#pragma once

/// Flips towards Delaunay triangles. Orientation is exact.

#include <array>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Turns inner sides of a polygon's triangles (its corners' indices) until every pair of triangles is locally Delaunay
/// (opposite angles sum to at most two right ones): short triangles instead of long ones. The polygon's own sides stay.
/// Lawson, "Software for C1 surface interpolation", Mathematical Software III, 1977.
void flip_to_delaunay(const std::vector<Point>& points, std::vector<std::array<int, 3>>& triangles);

}  // namespace sagitta
