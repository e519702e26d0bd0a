#pragma once

/// A flat face with holes, at z = 0: what a neck is modelled up to.

#include <TopoDS_Face.hxx>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// The face within `outline` (counter-clockwise) without the round or drawn `holes` (counter-clockwise too), which must
/// lie inside it and apart. Its normal is +z; lines and arcs are exact. Throws BuildError when the kernel makes none.
TopoDS_Face glue_face(const Loop& outline, const std::vector<Loop>& holes);

}  // namespace sagitta
