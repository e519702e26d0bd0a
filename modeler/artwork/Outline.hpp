#pragma once

/// Closed outlines on their way to regions.

#include <string>
#include <vector>

#include "artwork/Curve.hpp"

namespace sagitta {

/// How the outlines of one shape share out what is inside (SVG 1.1, section 11.3).
enum class FillRule { nonzero, evenodd };

/// A closed run of strokes with what is needed again and again.
struct Outline {
  StrokeLoop strokes;
  std::vector<Point> corners;  ///< chords within tolerance::drawn_chord, the first point not repeated
  double area = 0;             ///< mm^2, positive when counter-clockwise
  Box box;
};

/// The strokes must be closed, head to tail.
Outline make_outline(StrokeLoop strokes);
Outline reversed(const Outline& outline);

/// How often the corners' chords wind about p; 0 outside the box.
int winding(const Outline& outline, Point p);
/// The shortest way from p to the corners' chords.
double distance(const Outline& outline, Point p);

/// A point of `inner`'s chords that lies on none of `outer`'s, as far as a few tries show: where the two do not cross,
/// it says on which side of `outer` all of `inner` is.
Point witness(const Outline& inner, const Outline& outer);

/// What one drawn object fills.
struct Shape {
  std::vector<Outline> outlines;
  FillRule rule = FillRule::nonzero;
  std::string colour;  ///< "#rrggbb"
  std::string where;   ///< for messages: "line 12, <path>"
};

/// The region that a shape fills, when no two of its outlines cross: those that separate nothing are dropped, outer
/// ones turned counter-clockwise and holes clockwise.
DrawnRegion nested(const Shape& shape);

}  // namespace sagitta
