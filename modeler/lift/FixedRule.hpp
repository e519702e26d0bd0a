#pragma once

/// Programs that weigh a solid often integrate along each edge by one Gauss-Legendre rule, whatever the number of the
/// edge's knots: the geometry kernel's default takes 61 points at most (BRepGProp_Face::IntegrationOrder,
/// math::GaussPointsMax). A long run of arcs has more bends than such a rule has points.

#include <cstddef>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Whether one rule along the run finds its moments well: the area between the run and any point within `reach` (mm) of
/// its middle is off by no more than if the run lay `beside` (mm) beside its place. Where every run of a closed outline
/// is held to the same `beside`, the area is off by at most `beside` times the outline's length.
bool integrates(const std::vector<Piece>& run, double reach, double beside);

/// The run cut into as few parts of about as many arcs each as integrate, each of `least` arcs or more: the index of
/// each part's first arc, and the number of arcs. Parts of about `least` arcs may still not integrate.
std::vector<std::size_t> parts_that_integrate(const std::vector<Piece>& run, double reach, double beside,
                                              std::size_t least);

}  // namespace sagitta
