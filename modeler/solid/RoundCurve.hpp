#pragma once

/// Edges on round walls that lie along the board: side holes and rolled edges.

#include "solid/EdgeCurve.hpp"

namespace sagitta {

/// The wall over a straight line from a to b: an ellipse on a hole's, within 1e-7 mm on a roll.
EdgeCurve over_round_line(const Surface& surface, const BoundingSurface& bound, Point a, Point b);

/// A round wall that stands across a side hole or a rolled edge: the angle about its own centre against the angle about
/// the hole's or the roll's axis.
EdgeCurve over_round_arc(const Surface& surface, const BoundingSurface& bound, const CurveSegment& arc);

/// Where a round wall meets another surface.
EdgeCurve on_round_wall(const IntersectionCurve& curve, Point a, Point b);

}  // namespace sagitta
