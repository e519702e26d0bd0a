#pragma once

/// Whether a drawing says how large it is meant.

#include <string>

namespace sagitta {

/// True for an SVG whose width or height has a unit of length (mm, cm, in, pt, pc), and for a DXF (by its ending) with
/// a $INSUNITS that is known. False for another drawing, and where it cannot be read.
bool says_its_size(const std::string& path);

}  // namespace sagitta
