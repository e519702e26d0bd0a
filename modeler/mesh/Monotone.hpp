#pragma once

/// Triangulation of a monotone polygon.

#include <array>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Triangles (as indices) of a counter-clockwise polygon that runs once east along its lower side and once west along
/// its upper one, in time that grows with its corners. Coordinates are 32-bit floats held in doubles. Empty where the
/// polygon runs otherwise or a triangle would be flat. Source: Garey, Johnson, Preparata, Tarjan, "Triangulating a
/// simple polygon", 1978.
std::vector<std::array<int, 3>> cut_monotone(const std::vector<Point>& polygon);

}  // namespace sagitta
