#pragma once

/// Triangulation of a simple polygon by cutting ears, and flips towards Delaunay triangles. Orientation is exact.

#include <array>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Triangles (as indices) of a simple counter-clockwise polygon whose coordinates are 32-bit floats held in doubles, so
/// that orientation is judged exactly. No triangle is degenerate, even where many corners lie on one line, unless the
/// whole polygon lies on one line. Of the possible ears, the one with the best shape is cut first. A place may be
/// visited twice: where the polygon touches itself from outside it is parted there, so there are two triangles less.
std::vector<std::array<int, 3>> cut_ears(const std::vector<Point>& polygon);

/// Turns inner sides until every pair of triangles is locally Delaunay (opposite angles sum to at most two right ones):
/// short triangles instead of long ones. The polygon's own sides stay.
void flip_to_delaunay(const std::vector<Point>& points, std::vector<std::array<int, 3>>& triangles);

}  // namespace sagitta
