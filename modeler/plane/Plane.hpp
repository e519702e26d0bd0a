#pragma once

/// Points, vectors and curves of the plane that the board is drawn in. Lengths in mm, angles in radians,
/// counter-clockwise positive.

#include <cmath>
#include <numbers>
#include <vector>

namespace sagitta {

/// A point or a vector of the plane, mm.
struct Point {
  double x = 0;
  double y = 0;
  friend bool operator==(const Point&, const Point&) = default;
};

constexpr Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
constexpr Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
constexpr Point operator*(double s, Point a) { return {s * a.x, s * a.y}; }
constexpr double dot(Point a, Point b) { return a.x * b.x + a.y * b.y; }
/// z of the cross product: positive when b lies counter-clockwise of a.
constexpr double cross(Point a, Point b) { return a.x * b.y - a.y * b.x; }
inline double length(Point a) { return std::hypot(a.x, a.y); }
inline double distance(Point a, Point b) { return length(b - a); }
/// The vector turned left by a right angle.
constexpr Point left_of(Point a) { return {-a.y, a.x}; }
inline Point unit(Point a) { return (1 / length(a)) * a; }
/// The point at fraction s of the way from a to b.
constexpr Point between(Point a, Point b, double s) { return {a.x + s * (b.x - a.x), a.y + s * (b.y - a.y)}; }
/// The angle from a to b, clockwise, in (0, 2 pi].
inline double clockwise(Point a, Point b) {
  const double angle = -std::atan2(cross(a, b), dot(a, b));
  return angle <= 0 ? angle + 2 * std::numbers::pi : angle;
}
inline Point turned(Point a, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  return {c * a.x - s * a.y, s * a.x + c * a.y};
}

/// A straight segment from a to b.
struct LineSegment {
  Point a, b;
  friend bool operator==(const LineSegment&, const LineSegment&) = default;
};

/// A segment of an outline: a straight line from a to b, or (radius > 0) an arc about `centre` from a to b, starting at
/// angle `start` and turning by `sweep` (counter-clockwise positive, at most a full turn).
struct CurveSegment {
  Point a, b;
  Point centre;
  double radius = 0;
  double start = 0;
  double sweep = 0;

  bool is_arc() const { return radius > 0; }
  /// The point at t in [0, 1]; t = 0 and t = 1 give a and b exactly.
  Point at(double t) const;
  /// d/dt of at(t).
  Point slope(double t) const;
  double length() const;
  CurveSegment reversed() const;
  /// Mirrored in y (y -> -y), still running from a's image to b's image.
  CurveSegment mirrored() const;
  friend bool operator==(const CurveSegment&, const CurveSegment&) = default;
};

CurveSegment line(Point a, Point b);
/// An arc about `centre`; its ends are computed from the angles.
CurveSegment arc(Point centre, double radius, double start, double sweep);
/// An arc about `centre` through the given ends, the shorter way round in the sense of `counter_clockwise`; the ends
/// are kept exactly.
CurveSegment arc_between(Point centre, double radius, Point a, Point b, bool counter_clockwise);

/// A closed outline: segments head to tail, counter-clockwise when it bounds a filled region.
using Loop = std::vector<CurveSegment>;

/// Area enclosed, mm^2; positive for a counter-clockwise loop. Exact for lines and arcs.
double area(const Loop& loop);
double perimeter(const Loop& loop);
/// The same loop mirrored in y and reversed, so that a counter-clockwise loop stays one.
Loop mirrored(const Loop& loop);
/// Winding number of the loop about p; points on the outline give either neighbour's.
int winding(const Loop& loop, Point p);
Loop circle(Point centre, double radius);
Loop rectangle(Point low, Point high);

struct Box {
  Point low{1e300, 1e300}, high{-1e300, -1e300};
  void add(Point p);
  bool overlaps(const Box& other, double margin = 0) const;
  Box grown(double margin) const;
};
Box bounds(const CurveSegment& segment);
Box bounds(const Loop& loop);

}  // namespace sagitta
