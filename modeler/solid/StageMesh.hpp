#pragma once

#include "mesh/Mesh.hpp"

namespace sagitta {

/// The mesh of a stage, whatever it has: lifted from the plan, or, where side holes had to be cut into the solid, the
/// kernel's triangulation of it, closed and rounded in the same way (Mesh::face is then -1: no face of the shell).
/// Throws BuildError.
Mesh stage_mesh(const Shell& shell, double deviation = default_deviation, const Cancel& cancel = {});

}  // namespace sagitta
