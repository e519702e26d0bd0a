#pragma once

/// How far outlines of lines and arcs reach, and how near they come to each other: in closed form, without chords.
/// Lengths in mm.

#include "plane/Plane.hpp"

namespace sagitta {

/// Where two outlines are nearest.
struct Gap {
  double width = 1e300;  ///< 0: they touch or cross
  Point a, b;            ///< the nearest points, on the first and on the second
  Point middle() const { return between(a, b, 0.5); }
};

Gap gap(const CurveSegment& a, const CurveSegment& b);
/// Between the nearest two of their pieces; 1e300 wide where that is more than `most` along x or along y. What lies
/// inside of an outline is not looked at.
Gap gap(const std::vector<Loop>& a, const std::vector<Loop>& b, double most = 1e300);

/// How far outlines reach along a unit vector n: n.p, and where.
struct Reach {
  double low = 1e300, high = -1e300;
  Point low_at, high_at;
};
Reach reach(const std::vector<Loop>& loops, Point n);

/// Whether outlines, holes clockwise, hold p within them.
bool holds(const std::vector<Loop>& loops, Point p);

}  // namespace sagitta
