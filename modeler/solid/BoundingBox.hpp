#pragma once

/// The bounding box of a solid.

#include <Bnd_Box.hxx>
#include <TopoDS_Solid.hxx>

namespace sagitta {

/// The least box, mm, about a solid of which no curved face but the kernel's own round ones reaches further than its
/// edges. So it is with all that the shell makes: the playing surface is highest on its centre line, which leaves a
/// face over an edge and rises or falls evenly up to there, walls are upright, and behind every hollow face lies wood
/// that reaches further. Not widened by tolerances.
Bnd_Box bounding_box(const TopoDS_Solid& solid);

}  // namespace sagitta
