#pragma once

/// The judgement of a mesh before it is written.

#include <optional>

#include "lift/Flaw.hpp"
#include "mesh/Mesh.hpp"

namespace sagitta {

/// Nothing when the mesh is a closed manifold: no two points are equal as 32-bit floats, each directed edge is used
/// once and its reverse once, no two triangles lie back to back, the triangles about each point form one ring, and V -
/// E + F is `euler` (2 - 2 genus for one body).
std::optional<Flaw> flaw_in(const Mesh& mesh, long euler);

/// The same for the mesh of a shell, and the volume that it encloses is `planned` (mm^3) within what its deviation and
/// the rounding to 32 bits allow.
std::optional<Flaw> flaw_in(const Mesh& mesh, const Shell& shell, double planned);

/// A flaw where two points are equal once their coordinates are rounded to whole steps, mm.
std::optional<Flaw> equal_points(const Mesh& mesh, double step);

}  // namespace sagitta
