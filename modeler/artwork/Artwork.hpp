#pragma once

/// Artwork: a drawing read into closed outlines of lines, arcs and Bezier curves. Lengths in mm as drawn, x to the
/// right, y up.

#include <string>
#include <variant>
#include <vector>

#include "board/Problem.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

/// A cubic Bezier curve from a to b with the control points c and d.
struct Bezier {
  Point a, c, d, b;
  /// The point at t in [0, 1].
  Point at(double t) const {
    const Point p = between(a, c, t), q = between(c, d, t), r = between(d, b, t);
    return between(between(p, q, t), between(q, r, t), t);
  }
  friend bool operator==(const Bezier&, const Bezier&) = default;
};

/// One drawn curve: a line or an arc, or a Bezier.
using PathSegment = std::variant<CurveSegment, Bezier>;

/// A closed outline, strokes head to tail.
using PathLoop = std::vector<PathSegment>;

/// An area filled with one colour: outer outlines counter-clockwise, holes clockwise, none crossing another.
struct DrawnRegion {
  std::string colour;  ///< "#rrggbb", lower case
  std::vector<PathLoop> outlines;
  friend bool operator==(const DrawnRegion&, const DrawnRegion&) = default;
};

struct Artwork {
  std::vector<DrawnRegion> regions;  ///< in file order: later ones lie above earlier ones
  Faults notes;                      ///< what was repaired or left out, in words
  friend bool operator==(const Artwork&, const Artwork&) = default;
};

}  // namespace sagitta
