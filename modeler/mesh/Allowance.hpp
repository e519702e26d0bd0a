#pragma once

/// The volume error that a mesh may have.

#include "mesh/Mesh.hpp"

namespace sagitta {

/// How far the volume that a shell's mesh encloses may be from the exact one, mm^3: the curved faces within the stated
/// deviation, and every point within half a 32-bit step of where it belongs.
double volume_allowance(const Mesh& mesh, const Shell& shell);

}  // namespace sagitta
