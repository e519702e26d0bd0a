#pragma once

/// Snap rounding of lines and arcs.

#include "plan/PlanarGraph.hpp"

namespace sagitta {

/// Snap-rounds an arrangement of lines and arcs: what lies nearer together than the snap is made to coincide, or kept
/// apart, so that neither solid nor mesh meets a gap that is not meant. With r = 0.9 snap, afterwards
///   - two points are at least r apart;
///   - a point is at least 0.7 r from an edge that does not end in it, and so are two edges without a common end;
///   - two edges with a common end are at least r apart from `longest_cusp` on, counted along the edge.
/// A web in which this holds already is left exactly as it is. The proof stands in DEVELOPERS.md.
void round_off(PlanarGraph& web, double snap);

/// Two edges may leave a common end along one tangent, as a circle does that touches a line from inside: up to so far
/// they may be nearer together than the snap. mm.
inline constexpr double longest_cusp = 0.1;

}  // namespace sagitta
