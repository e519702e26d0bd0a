#pragma once

/// Arc splines: lines and arcs with one tangent, fitted to the points of a polygon.

#include <optional>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// A smooth stretch of a polygon, for which arcs are looked for. Lengths in mm.
struct SmoothRun {
  std::vector<Point> stations;             ///< along the polygon, at least two: its points and points between them
  std::vector<double> follow;              ///< for each of them: how far the chain may pass it by
  std::optional<Point> way_in;             ///< unit vector: what comes before has this direction at the first station
  std::optional<Point> way_out;            ///< and what follows at the last
  double least_left = 0, least_right = 0;  ///< radii of arcs to that side; smaller ones only where no other serves
  double slack_in = 0, slack_out = 0;      ///< how far straight lines before and after run in that direction
};

/// Few arcs and lines, each following the one before with one tangent, as near to all stations as they say. Where a
/// line comes before or after, the chain begins or ends on that line, up to the slack from the station; elsewhere it
/// begins and ends at the first and last station exactly. Where no arc serves, a line goes to the next station in its
/// own way.
std::vector<CurveSegment> fit_arc_spline(const SmoothRun& run);

/// How far a disc of the run's least radius stays out of the corner that a tighter arc makes: by (r - radius) sweep^2
/// / 8. Not above 0 where it rolls along all of the piece.
double left_standing(const CurveSegment& segment, const SmoothRun& run);

}  // namespace sagitta
