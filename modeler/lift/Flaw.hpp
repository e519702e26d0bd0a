#pragma once

/// What can be wrong with a solid or a mesh.

#include <array>
#include <optional>
#include <string>

#include "lift/Shell.hpp"

namespace sagitta {

/// Why a solid or a mesh is not the wood that its plan describes, and where. What leaves the program has none.
struct Flaw {
  enum class Kind {
    empty,         ///< no face, no triangle, or a triangle that names a point which is not there
    equal_points,  ///< mesh: two points are equal as 32-bit floats, or a triangle has two equal corners
    edge_use,      ///< an edge does not lie between exactly two faces, or both use it the same way round
    doubled,       ///< mesh: two triangles lie back to back on the same three corners
    vertex_use,    ///< mesh: the triangles about a point do not form one ring
    shells,        ///< solid: the faces are not one closed shell
    euler,         ///< V - E + F - (L - F) is not the shell's
    kernel,        ///< solid: the kernel's own check finds it invalid
    tolerance,     ///< solid: a vertex is less certain than a vertex of the plan may be
    pcurve,        ///< solid: an edge strays from its pcurve in the parameters of a face
    volume,        ///< the volume is not the plan's
    deviation,     ///< mesh: its triangles stray further from the exact surfaces than was asked
    coverage,      ///< the cells within a cut have not the area within its outline
    file           ///< solid: what a reader makes of its STEP file is not one sound solid
  };
  Kind kind = Kind::empty;
  std::string what;            ///< in words, with figures
  std::array<double, 3> at{};  ///< mm, board's frame; the middle of the body where no place is known
  int face = -1;               ///< index into Shell::faces; -1: not known
};

/// A flaw where a body's volume is not the plan's within `allowed`, mm^3; its place is the middle of the shell.
std::optional<Flaw> volume_flaw(const Shell& shell, double found, double planned, double allowed);

/// A flaw where triangles stray from the exact surfaces by more than was asked, mm; its place is the middle of the
/// shell.
std::optional<Flaw> deviation_flaw(const Shell& shell, double found, double asked);

/// A cut, or the wood itself, whose cells in the plan have not the area within its outlines: rounding moves an outline
/// by at most three snaps, so no more than that times its length may be missing or too much.
std::optional<Flaw> coverage_flaw(const Plan& plan);

}  // namespace sagitta
