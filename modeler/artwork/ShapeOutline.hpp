#pragma once

/// Closed outlines on their way to regions.

#include <string>
#include <vector>

#include "artwork/Curve.hpp"
#include "polygon/FillRule.hpp"

namespace sagitta {

/// A closed run of strokes with what is needed again and again.
struct Outline {
  PathLoop strokes;
  std::vector<Point> corners;  ///< of chords that stand for the strokes; the last one is where the first stroke begins
  double area = 0;             ///< mm^2, positive when counter-clockwise
  Box box;                     ///< of the corners
};
using Outlines = std::vector<Outline>;

/// The strokes must be closed, head to tail, and at least one. `chord` is how far the chords may depart from them, mm.
Outline make_outline(PathLoop strokes, double chord);
Outline reversed(const Outline& outline);

/// The winding number of the chords about p.
int winding(const Outline& outline, Point p);

/// A point on `inner`'s chords that lies on none of `outer`'s, as far as a few tries show: where the two do not cross,
/// it says on which side of `outer` all of `inner` is. `clear` is a distance that is enough, mm.
Point witness(const Outline& inner, const Outline& outer, double clear);

/// Whether both are the same outline, whatever the direction and the place where they begin.
bool same_outline(const Outline& a, const Outline& b, double touch);

/// From p to the nearest point of the chord a b.
double distance_to_chord(Point a, Point b, Point p);
bool holds(const Box& outer, const Box& inner);

/// What one drawn object fills, as it was drawn.
struct DrawnShape {
  std::vector<PathLoop> loops;
  FillRule rule = FillRule::nonzero;
  std::string colour;  ///< "#rrggbb"
  std::string where;   ///< for messages: "line 12, <path>"
};

}  // namespace sagitta
