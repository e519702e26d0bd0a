#pragma once

/// Boolean operations of polygons, divided into strips.

#include "plane/Cancel.hpp"
#include "polygon/Clip.hpp"

namespace sagitta {

/// The answer of `clipped`, up to two whole numbers. Clipper looks along a whole line of the drawing at each of its
/// points; so large jobs are cut into upright strips and the answers put together again, two strips at a time. Always
/// the same for the same job. When it is cancelled, the result is unspecified.
GridPaths tiled_boolean(const ClipJob& job, const Cancel& cancel);

}  // namespace sagitta
