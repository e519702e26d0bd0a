#pragma once

/// Guide lines as exact wires for a STEP file.

#include <vector>

#include "cad/GuideLines.hpp"
#include "cad/StepFile.hpp"

namespace sagitta {

/// The guide lines as exact wires: lines, circles and conics stay what they are, other curves lie within 1e-7 mm.
std::vector<StepLine> step_lines(const Surface& surface, const std::vector<GuideLine>& guides);

}  // namespace sagitta
