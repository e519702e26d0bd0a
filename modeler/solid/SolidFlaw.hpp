#pragma once

/// The judgement of a solid before it is written.

#include <TopoDS_Solid.hxx>
#include <optional>

#include "lift/Flaw.hpp"

namespace sagitta {

/// Nothing when the solid itself holds what `flaw_in` asks, without any file: the judgement of a solid that was read.
std::optional<Flaw> flaw_as_it_is(const TopoDS_Solid& solid, int euler);

/// Nothing when the solid is one closed shell, every edge lies between exactly two faces that use it in opposite
/// directions, V - E + F - (L - F) is `euler` (2 - 2 genus), no vertex or edge is less certain than tolerance::vertex,
/// every edge stays within its tolerance of its pcurve in each face, between the kernel's own samples too, and
/// BRepCheck finds it valid; and when all of this holds again after its STEP file is read back. The file is written and
/// read only where a reader could take edges for one (NarrowCorner.hpp): else reading changes nothing that is asked
/// here. Not to be called from two threads at once (ReadBack.hpp). What the kernel throws passes.
std::optional<Flaw> flaw_in(const TopoDS_Solid& solid, int euler);

/// How far the volume of a solid, by adaptive integration, may be from the plan's, of it.
inline constexpr double volume_agreement = 1e-6;

}  // namespace sagitta
