#pragma once

#include <TopoDS_Solid.hxx>
#include <vector>

#include "plan/Plan.hpp"

namespace sagitta {

/// Cuts the side holes that are not clear: the one place where a boolean of the kernel is used. Throws BuildError.
TopoDS_Solid cut_holes(const TopoDS_Solid& solid, const std::vector<SideHole>& holes);

}  // namespace sagitta
