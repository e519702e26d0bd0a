#pragma once

/// The glue face of a neck, read from its STEP file.

#include <string>

#include "neck/NeckShape.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

/// Reads a neck's STEP file: its glue face is the largest face that looks up. `outline` and `thickness` are the
/// board's, for what of the neck stands in its place, measured by a boolean common with the board's plain prism.
/// Foreign files can make the kernel loop, exhaust memory or crash: run this in a process with limits on both. Throws
/// nothing; a failure is put into words.
NeckReading read_neck(const std::string& path, const Loop& outline, double thickness);

}  // namespace sagitta
