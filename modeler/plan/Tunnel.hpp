#pragma once

/// A level round hole seen from above.

#include <cmath>
#include <compare>

#include "plane/Plane.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {

/// A level round hole seen from above: a strip of the plane along its axis. Lengths in mm.
struct Tunnel {
  double nx = 0, ny = 0;  ///< unit normal of the axis, to the left of the way in
  double offset = 0;      ///< the axis is where nx x + ny y = offset
  double radius = 0;
  friend auto operator<=>(const Tunnel&, const Tunnel&) = default;

  /// How far p lies to the left of the axis.
  double across(Point p) const { return nx * p.x + ny * p.y - offset; }
  /// How far p lies along the axis, inward; from the place nearest to the origin.
  double along(Point p) const { return ny * p.x - nx * p.y; }
  Point at(double along, double across) const {
    return {(offset + across) * nx + along * ny, (offset + across) * ny - along * nx};
  }
  /// Half the hole's height at that distance from the axis. The wall is upright at the sides: there a vertex may lie
  /// off by tolerance::vertex.
  double half_height(double across) const {
    const double room = radius - std::abs(across);
    return room <= tolerance::vertex ? 0 : std::sqrt(room * (radius + std::abs(across)));
  }
  /// The angle from the upright through the axis to the wall at that distance, -pi/2 to pi/2.
  double angle(double across) const {
    if (radius - std::abs(across) <= tolerance::vertex) return std::copysign(std::numbers::pi / 2, across);
    return std::asin(across / radius);
  }
};

}  // namespace sagitta
