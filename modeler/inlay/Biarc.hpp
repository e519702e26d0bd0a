#pragma once

/// Two arcs with one tangent between two points with given directions.

#include <vector>

#include "inlay/FitTolerance.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

/// The arc from p to q that leaves p along the unit vector t; a line when it rises over its chord by less than `flat`.
CurveSegment arc_along(Point p, Point t, Point q, double flat = tolerance::flat);

/// Two arcs from p to q with a common tangent where they meet, leaving p along t and reaching q along u (unit vectors);
/// one piece where both are one circle or one line. Nothing when an arc would turn by more than 3 radians.
/// `share` 1: with legs of equal length; else the first leg is that many times as long as then.
/// Source: the joint divides the way between the legs' ends, closed form (common textbook construction, from memory).
std::vector<CurveSegment> biarc(Point p, Point t, Point q, Point u, double share = 1, double flat = tolerance::flat);

/// Unit tangent at the end of a piece.
Point end_direction(const CurveSegment& segment);

/// Distance from x to the chain of pieces, each taken between the rays through its ends.
double off_chain(const std::vector<CurveSegment>& chain, Point x);

}  // namespace sagitta
