#pragma once

/// Arc splines: lines and arcs with one tangent, fitted to the points of a polygon.

#include <optional>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// A smooth part of a polygon that an arc spline is fitted to. Lengths in mm.
struct SmoothRun {
  std::vector<Point> stations;             ///< along the polygon, at least two: its points and points between them
  std::vector<double> follow;              ///< for each station: the largest distance to the spline
  std::optional<Point> way_in;             ///< unit vector: what comes before has this direction at the first station
  std::optional<Point> way_out;            ///< and what follows at the last
  double least_left = 0, least_right = 0;  ///< radii of arcs to that side; smaller ones only where no other serves
  double slack_in = 0, slack_out = 0;      ///< how far straight lines before and after run in that direction
};

/// An arc spline (few arcs and lines, G1) within each station's distance of it. Where a line comes before or after, the
/// spline begins or ends on that line, up to the slack from the station; elsewhere it begins and ends exactly at the
/// first and the last station. Where no arc is close enough, a line goes straight to the next station.
std::vector<CurveSegment> fit_arc_spline(const SmoothRun& run);

/// How far a disc of the run's least radius stays out of the corner that a tighter arc makes: by (r - radius) sweep^2
/// / 8. Not above 0 where it rolls along all of the piece.
double left_standing(const CurveSegment& segment, const SmoothRun& run);

}  // namespace sagitta
