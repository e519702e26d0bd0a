#pragma once

/// Convex shapes with rounded corners: what dots, blocks, trapezoids, diamonds, slots and their pockets look like from
/// above. Lengths in mm, angles in radians.

#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// A convex polygon, counter-clockwise and without repeated points, grown by a disc of `radius` (>= 0). One point: a
/// disc. Two: a disc drawn along a line. No point: nothing at all.
struct Rounded {
  std::vector<Point> core;
  double radius = 0;
  bool empty() const { return core.empty(); }
  friend bool operator==(const Rounded&, const Rounded&) = default;
};

/// The outline, counter-clockwise. A disc is two half circles that meet east and west of its centre; a polygon has its
/// sides as lines, each followed by the corner's arc when radius > 0. The shape must have an inside.
Loop outline(const Rounded& shape);

/// How far the shape reaches in direction n (a unit vector): the largest n.p over its points.
double support(const Rounded& shape, Point n);

/// Shortest way between two shapes, neither of them empty; 0 when they touch. Where they overlap: minus the shortest
/// way to part them.
double distance(const Rounded& a, const Rounded& b);

/// All points of the shape at least `delta` inside it; a negative delta grows it. The radius gives way first, then the
/// polygon is inset. Empty when nothing is left.
Rounded shrunk(const Rounded& shape, double delta);

/// Turned about the origin, counter-clockwise positive.
Rounded turned(const Rounded& shape, double angle);
Rounded moved(const Rounded& shape, Point by);
/// Mirrored in y, counter-clockwise again.
Rounded mirrored(const Rounded& shape);

}  // namespace sagitta
