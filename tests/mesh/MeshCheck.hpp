#pragma once

#include <string>

#include "mesh/Mesh.hpp"

namespace sagitta {

/// Empty when every directed edge is used once and its reverse once, no two points are equal, every index exists and
/// the Euler number V - E + F is 2 - 2 genus; else what is wrong.
std::string unsound(const Mesh& mesh, int genus);

/// How far the enclosed volume may be from the exact one, mm^3: the curved faces within the stated deviation, and
/// every point within half a 32-bit step of where it belongs.
double volume_allowance(const Mesh& mesh, const Shell& shell);

}  // namespace sagitta
