#pragma once

/// Pairs of edges that leave a vertex almost with one tangent and cross again beside it.

#include "plan/PlanarGraph.hpp"

namespace sagitta {

/// Edges that leave a point side by side and cross again within `reach` of it (mm), or so that the lens between them is
/// no deeper than tolerance::vertex: the lesser of them, or the one that is an arc, is turned there until the two touch
/// in the point and cross nowhere near it. The arc keeps its ends; its middle moves by its chord times the angle
/// over 8. A web without such edges is left exactly as it is.
void untangle_cusps(PlanarGraph& web, double reach);

}  // namespace sagitta
