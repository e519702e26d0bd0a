#pragma once

/// Convex shapes with rounded corners: what dots, blocks, trapezoids, diamonds, slots and their pockets look like from
/// above. Lengths in mm, angles in radians.

#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// The Minkowski sum of a convex polygon (counter-clockwise, no point twice) and a disc of `radius` (>= 0). One point:
/// a disc. Two points: a slot with round ends. No point: empty.
struct RoundedPolygon {
  std::vector<Point> core;
  double radius = 0;
  bool empty() const { return core.empty(); }
  friend bool operator==(const RoundedPolygon&, const RoundedPolygon&) = default;
};

/// The outline, counter-clockwise. A disc is two half circles that meet east and west of its centre; a polygon has its
/// sides as lines, each followed by the corner's arc when radius > 0. The shape must have an inside.
Loop outline(const RoundedPolygon& shape);

/// How far the shape reaches in direction n (a unit vector): the largest n.p over its points.
double support(const RoundedPolygon& shape, Point n);

/// Shortest way between two shapes, neither of them empty; 0 when they touch. Where they overlap: minus the shortest
/// way to part them.
double distance(const RoundedPolygon& a, const RoundedPolygon& b);

/// All points of the shape at least `delta` inside it; a negative delta grows it. The radius gives way first, then the
/// polygon is inset. Empty when nothing is left.
RoundedPolygon shrunk(const RoundedPolygon& shape, double delta);

/// Turned about the origin, counter-clockwise positive.
RoundedPolygon turned(const RoundedPolygon& shape, double angle);
RoundedPolygon moved(const RoundedPolygon& shape, Point by);
/// Mirrored in y, counter-clockwise again.
RoundedPolygon mirrored(const RoundedPolygon& shape);

}  // namespace sagitta
