#pragma once

/// What drawings are made of before their last transform, and how it becomes strokes.

#include <variant>
#include <vector>

#include "artwork/Affine.hpp"
#include "artwork/Artwork.hpp"

namespace sagitta {

/// An arc of an ellipse: centre + cos(t) u + sin(t) v for t from `start` to `start + sweep`, from a to b. u and v need
/// not be square to each other, so that any affine image of it is one too.
struct EllipseArc {
  Point a, b;
  Point centre, u, v;
  double start = 0, sweep = 0;
  Point at(double t) const { return centre + std::cos(t) * u + std::sin(t) * v; }
};

using Curve = std::variant<LineSegment, Bezier, EllipseArc>;

/// A run of curves, head to tail.
struct Subpath {
  std::vector<Curve> curves;
  bool closed = false;  ///< the drawing says that it is closed
};

/// A whole ellipse, or a part of it; the ends are computed.
EllipseArc ellipse_arc(Point centre, Point u, Point v, double start, double sweep);

/// The arc of SVG 1.1, section 8.3.8, by the appendix F.6: from a to b, radii enlarged where they cannot reach. Radii
/// of 0 give a straight line. `turn` in radians.
Curve svg_arc(Point a, Point b, double rx, double ry, double turn, bool large, bool sweep);

/// A quadratic Bezier curve as a cubic one: the same curve.
Bezier raised(Point a, Point control, Point b);

Point start_of(const PathSegment& stroke);
Point end_of(const PathSegment& stroke);
PathSegment reversed(const PathSegment& stroke);

/// The arc with its end moved a little, its centre as far from one end as from the other.
CurveSegment arc_through(const CurveSegment& arc, Point end);

/// Adds the image of a curve to the strokes, without those that have no length. An ellipse that has become a circle
/// stays an arc; any other becomes Bezier curves within tolerance::drawn_round.
void draw(const Curve& curve, const Affine& frame, PathLoop& strokes);

/// Points of the stroke behind its start, its end included; the chords depart from it by at most `deviation`.
void flatten(const PathSegment& stroke, double deviation, std::vector<Point>& points);

/// The area that a closed run of strokes encloses, positive when counter-clockwise. Exact for lines, arcs and Bezier
/// curves.
double area(const PathLoop& loop);
/// The smallest box around the strokes, exact.
Box bounds(const PathLoop& loop);

}  // namespace sagitta
