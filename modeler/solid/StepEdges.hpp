#pragma once

/// What the text of a STEP file says of its edges, before the kernel mends it.

#include <STEPControl_Reader.hxx>

namespace sagitta {

/// How far the ends of the file's straight edges lie off their lines, at most, in the file's own unit: a corner or a
/// line was changed alone. The kernel moves such a corner back without a word.
double ends_off_lines(const STEPControl_Reader& reader);

/// Whether a point, a direction, a curve or a surface of the file could not be read whole: the kernel takes 0 for a
/// number that is none.
bool has_broken_geometry(const STEPControl_Reader& reader);

}  // namespace sagitta
