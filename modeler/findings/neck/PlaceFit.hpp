#pragma once

/// How well the board's edges lie on a flat face of a neck under one motion in its plane, and motions that fit better.
/// Lengths in mm, angles in radians.

#include <optional>
#include <vector>

#include "neck/BoardSeat.hpp"
#include "neck/FaceSpans.hpp"

namespace sagitta {

/// The board's place in the plane of a face: where its x = 0, y = 0 lies, and how its x is turned.
struct FlatMotion {
  Point at;
  double angle = 0;
};

/// The face's outlines, given in its plane, as they lie in the board's frame.
NeckOutlines laid(const NeckOutlines& face, const FlatMotion& motion);

/// The motion with the board moved in its own frame.
FlatMotion shifted(const FlatMotion& motion, double along, double across, double turn);

/// One edge of the board against the neck's at one x.
struct EdgeSample {
  double x = 0;
  int side = 0;    ///< 0 at negative y, 1 at positive y
  double out = 0;  ///< the neck beyond where it should be: the board's edge, or the trim outside it
};

struct EdgeFit {
  std::vector<EdgeSample> samples;  ///< where the neck has a side
  double mean = 0;                  ///< of |out|, over all places; where there is no side, worst_side counts
  double compared = 0;              ///< share of the places where the neck has a side
};

/// Where the neck has no side within capture(), this counts. mm.
inline constexpr double worst_side = 3;
/// A side further away than this from where it should be is another part of the neck. mm.
double capture(const BoardSeat& seat);

EdgeFit edge_fit(const NeckOutlines& face, const FlatMotion& motion, const BoardSeat& seat, double reach);
EdgeFit edge_fit(const NeckOutlines& face, const FlatMotion& motion, const BoardSeat& seat);

/// What a refined motion may change.
enum class Free { across_and_turn, all };

/// The motion near this one with the least mean distance. Where several have it, the one that shares it between both
/// sides. Source: least squares, weighted anew by 1/|distance| for the mean of distances (Weiszfeld).
FlatMotion refined(const NeckOutlines& face, const FlatMotion& motion, const BoardSeat& seat, Free free);

/// A straight line y = at + slope x by medians, so that few strays do not move it. Source: Theil and Sen.
struct MiddleLine {
  double at = 0, slope = 0;
};
std::optional<MiddleLine> middle_line(std::vector<Point> points);

}  // namespace sagitta
