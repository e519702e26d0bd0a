#pragma once

#include <string>

#include "mesh/Allowance.hpp"

namespace sagitta {

/// Empty when every directed edge is used once and its reverse once, no two points are equal, every index exists and
/// the Euler number V - E + F is 2 - 2 genus; else what is wrong.
std::string unsound(const Mesh& mesh, int genus);

}  // namespace sagitta
