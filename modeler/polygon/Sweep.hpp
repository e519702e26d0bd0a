#pragma once

#include <polyclipping/clipper.hpp>

#include "plane/Cancel.hpp"

namespace sagitta {

/// What is asked of Clipper. Whole numbers, as Clipper has them.
struct ClipJob {
  ClipperLib::Paths subject, clip;
  ClipperLib::ClipType how = ClipperLib::ctUnion;
  ClipperLib::PolyFillType fill = ClipperLib::pftPositive;
};

/// Clipper's answer, up to two units. Clipper looks along a whole line of the drawing at each of its points; so large
/// jobs are cut into upright strips and the answers put together again, two strips at a time. Always the same for the
/// same job. Cancelled: anything.
ClipperLib::Paths swept(const ClipJob& job, const Cancel& cancel);

}  // namespace sagitta
