#pragma once

/// Corners of faces that a reader of STEP files may take for one edge.

#include <TopoDS_Solid.hxx>

namespace sagitta {

/// Whether some face has a corner, or touches itself in a vertex, with two edges that leave it so close to each other
/// that a reader which takes 1e-7 mm for nothing cannot tell them apart beyond tolerance::vertex; or has an edge no
/// longer than that. A reader may then join or widen what was exact: only reading a file back tells.
bool has_narrow_corner(const TopoDS_Solid& solid);

}  // namespace sagitta
