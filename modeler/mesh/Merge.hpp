#pragma once

/// Points of a mesh that a file cannot tell apart made one.

#include "mesh/Mesh.hpp"

namespace sagitta {

/// Makes one point of points that are joined by a side and equal once their coordinates are rounded to whole multiples
/// of `step` (mm), wherever the mesh keeps its form: the side's ends have two neighbours in common, the third corners
/// of its two triangles (the link condition: else a handle or a part would be pinched off), and no triangle is turned
/// over or flattened. The two triangles go, the others keep their order. Other points stay. The mesh is a closed
/// manifold. Returns how far the furthest point was moved, mm.
/// Source of the condition: Dey, Edelsbrunner, Guha, Nekhayev, "Topology preserving edge contraction", 1999.
double merge_equal_points(Mesh& mesh, double step);

}  // namespace sagitta
