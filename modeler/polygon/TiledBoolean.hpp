#pragma once

/// Boolean operations of polygons, divided into strips.

#include "plane/Cancel.hpp"
#include "polygon/Clip.hpp"

namespace sagitta {

/// The result of `clipped`, exact to two units of the grid. Clipper's sweep line crosses the whole drawing at each
/// vertex, so a large operation is divided into vertical strips, and the results are merged in pairs. The same
/// operation always gives the same result. When it is cancelled, the result is unspecified.
GridPaths tiled_boolean(const ClipJob& job, const Cancel& cancel);

}  // namespace sagitta
