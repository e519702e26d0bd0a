#pragma once

/// Programs that weigh a solid often integrate along each edge by one Gauss-Legendre rule, whatever the number of the
/// edge's knots: the geometry kernel's default takes 61 points at most (BRepGProp_Face::IntegrationOrder,
/// math::GaussPointsMax). A long run of arcs has more bends than such a rule has points.

#include <cstddef>
#include <span>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Whether one rule along the run finds its moments well: the area between the run and any point within `reach` (mm) of
/// its middle is off by no more than if the run lay `beside` (mm) beside its place. Where every run of a closed outline
/// is held to the same `beside`, the area is off by at most `beside` times the outline's length.
bool integrates(std::span<const CurveSegment> run, double reach, double beside);

/// Arcs of a run, from `first` up to but not including `end`.
struct ArcSpan {
  std::size_t first = 0, end = 0;
};

/// The arcs of a run that become one wall each, `least` or more together, so that the run has as few walls as can be
/// where every one of them integrates. Arcs in no span stay walls of their own. Found from the end backwards (dynamic
/// programming); a longer span is looked at only while the shorter ones integrate.
std::vector<ArcSpan> spans_that_integrate(const std::vector<CurveSegment>& run, double reach, double beside,
                                          std::size_t least);

}  // namespace sagitta
