#pragma once

/// The pcurves of edges on plane faces.

#include <TopoDS_Solid.hxx>

namespace sagitta {

/// Keeps them with the edges. The kernel need not have them, and projects an edge anew each time that it looks at it on
/// a plane; its STEP writer looks at all edges of a face for each of them, which took it a fifth of its time for a
/// standard board and half a minute for a blank with a border of waves. To be called before the solid is published.
void keep_plane_pcurves(const TopoDS_Solid& solid);

}  // namespace sagitta
