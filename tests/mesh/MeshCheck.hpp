#pragma once

#include <string>

#include "mesh/Mesh.hpp"

namespace sagitta {

/// Empty when every directed edge is used once and its reverse once, no two points are equal, every index exists and
/// the Euler number V - E + F is 2 - 2 genus; else what is wrong.
std::string unsound(const Mesh& mesh, int genus);

/// How far the enclosed volume may be from the exact one, mm^3: every point within the stated deviation and half a
/// 32-bit step of where it belongs, over the whole area.
double volume_allowance(const Mesh& mesh);

/// Area of all triangles, mm^2.
double area(const Mesh& mesh);

}  // namespace sagitta
