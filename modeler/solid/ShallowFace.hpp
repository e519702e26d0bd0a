#pragma once

/// Faces of very large radius.

#include <TopoDS_Solid.hxx>

namespace sagitta {

/// Whether some face that looks up or down is curved, but with no radius under `least_round` in its middle. Where such
/// a face meets another that is nearly level, a small error of height moves the edge far: a reader that makes the edge
/// again may find it elsewhere. Only reading a file back tells.
bool has_shallow_face(const TopoDS_Solid& solid);

/// Surfaces of fretboards have radii of some hundred mm. mm.
inline constexpr double least_round = 1e5;

}  // namespace sagitta
