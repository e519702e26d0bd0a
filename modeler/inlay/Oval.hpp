#pragma once

/// An ellipse as cutters leave it, and the curve that runs beside it. Lengths in mm.

#include <optional>

#include "plane/Plane.hpp"

namespace sagitta {

/// An ellipse about the origin with half axes x and y along the axes, opened by a disc of radius `cutter`: where it
/// bends more tightly (at the ends of its longer axis, when b^2 / a < cutter), the disc that touches it twice is its
/// end.
struct Oval {
  double x = 0, y = 0, cutter = 0;

  bool empty() const;  ///< the disc does not go in
  bool whole() const;  ///< nothing is taken off the ellipse
  /// How far the disc stays away from the ends of the longer axis.
  double off_ends() const;
  /// The outline moved out by `off` >= 0, counter-clockwise, as arcs that follow each other with one tangent and stray
  /// from it by `stray` at most. Their ends lie on it at every second joint. Must not be empty.
  Loop outline(double off, double stray) const;
};

}  // namespace sagitta
