#pragma once

/// Triangulation of a simple polygon by cutting ears. Orientation is exact.

#include <array>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Triangles (as indices) of a simple counter-clockwise polygon whose coordinates are 32-bit floats held in doubles, so
/// that orientation is judged exactly. No triangle is degenerate, even where many corners lie on one line, unless the
/// whole polygon lies on one line. Of the possible ears, the one with the best shape is cut first. A place may be
/// visited twice: where the polygon touches itself from outside it is parted there, so there are two triangles less.
std::vector<std::array<int, 3>> cut_ears(const std::vector<Point>& polygon);

}  // namespace sagitta
