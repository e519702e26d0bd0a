#include "plane/Plane.hpp"

#include <algorithm>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;

Point on_circle(Point centre, double radius, double angle) {
  return {centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)};
}

/// Positive when p lies left of a -> b, negative when right. A point on the line counts as moved a little toward +x,
/// and a much smaller bit toward +y, so that neighbours that share a chord always agree about it.
int side(Point a, Point b, Point p) {
  const bool swapped = b.y < a.y || (b.y == a.y && b.x < a.x);
  if (swapped) std::swap(a, b);
  const double area = cross(b - a, p - a);
  const int canonical = area > 0 ? 1 : area < 0 ? -1 : b.y > a.y ? -1 : 1;
  return swapped ? -canonical : canonical;
}

/// What the chord a -> b adds to the winding about p, counted along the ray toward +x.
int chord_winding(Point a, Point b, Point p) {
  if (a.y <= p.y && p.y < b.y) return side(a, b, p) > 0 ? 1 : 0;
  if (b.y <= p.y && p.y < a.y) return side(a, b, p) < 0 ? -1 : 0;
  return 0;
}

bool full_turn(const CurveSegment& segment) { return std::abs(segment.sweep) > 2 * pi - tolerance::same; }

/// What lies between an arc and its chord adds one turn: the part of the disc on the arc's side of the chord.
int bulge_winding(const CurveSegment& segment, Point p) {
  const Point d = p - segment.centre;
  if (dot(d, d) >= segment.radius * segment.radius) return 0;
  const int turn = segment.sweep > 0 ? 1 : -1;
  if (full_turn(segment)) return turn;
  return side(segment.a, segment.b, p) == -turn ? turn : 0;
}

/// True when the arc passes through the direction `angle` strictly inside its sweep.
bool passes(const CurveSegment& segment, double angle) {
  double ahead = std::fmod(segment.sweep > 0 ? angle - segment.start : segment.start - angle, 2 * pi);
  if (ahead < 0) ahead += 2 * pi;
  return ahead < std::abs(segment.sweep);
}

}  // namespace

Point CurveSegment::at(double t) const {
  if (t == 0) return a;
  if (t == 1) return b;
  return is_arc() ? on_circle(centre, radius, start + t * sweep) : between(a, b, t);
}

Point CurveSegment::slope(double t) const {
  if (!is_arc()) return b - a;
  const double angle = start + t * sweep;
  return radius * sweep * Point{-std::sin(angle), std::cos(angle)};
}

double CurveSegment::length() const { return is_arc() ? radius * std::abs(sweep) : distance(a, b); }

CurveSegment CurveSegment::reversed() const { return {b, a, centre, radius, start + sweep, -sweep}; }

CurveSegment CurveSegment::mirrored() const {
  return {{a.x, -a.y}, {b.x, -b.y}, {centre.x, -centre.y}, radius, -start, -sweep};
}

CurveSegment line(Point a, Point b) { return {a, b, {}, 0, 0, 0}; }

CurveSegment arc(Point centre, double radius, double start, double sweep) {
  return {on_circle(centre, radius, start), on_circle(centre, radius, start + sweep), centre, radius, start, sweep};
}

CurveSegment arc_between(Point centre, double radius, Point a, Point b, bool counter_clockwise) {
  const Point from = a - centre, to = b - centre;
  double sweep = std::atan2(cross(from, to), dot(from, to));
  if (counter_clockwise && sweep < 0) sweep += 2 * pi;
  if (!counter_clockwise && sweep > 0) sweep -= 2 * pi;
  return {a, b, centre, radius, std::atan2(from.y, from.x), sweep};
}

double area(const Loop& loop) {
  if (loop.empty()) return 0;
  const Point origin = loop.front().a;
  double twice = 0;
  for (const CurveSegment& segment : loop) {
    twice += cross(segment.a - origin, segment.b - origin);
    if (segment.is_arc()) twice += segment.radius * segment.radius * (segment.sweep - std::sin(segment.sweep));
  }
  return twice / 2;
}

double perimeter(const Loop& loop) {
  double sum = 0;
  for (const CurveSegment& segment : loop) sum += segment.length();
  return sum;
}

Loop mirrored(const Loop& loop) {
  Loop image;
  image.reserve(loop.size());
  for (auto piece = loop.rbegin(); piece != loop.rend(); ++piece) image.push_back(piece->mirrored().reversed());
  return image;
}

int winding(const Loop& loop, Point p) {
  int turns = 0;
  for (const CurveSegment& segment : loop) {
    turns += chord_winding(segment.a, segment.b, p);
    if (segment.is_arc()) turns += bulge_winding(segment, p);
  }
  return turns;
}

Loop circle(Point centre, double radius) {
  const Point east{centre.x + radius, centre.y}, west{centre.x - radius, centre.y};
  return {{east, west, centre, radius, 0, pi}, {west, east, centre, radius, pi, pi}};
}

Loop rectangle(Point low, Point high) {
  const Point south_east{high.x, low.y}, north_west{low.x, high.y};
  return {line(low, south_east), line(south_east, high), line(high, north_west), line(north_west, low)};
}

void Box::add(Point p) {
  low = {std::min(low.x, p.x), std::min(low.y, p.y)};
  high = {std::max(high.x, p.x), std::max(high.y, p.y)};
}

bool Box::overlaps(const Box& other, double margin) const {
  return low.x <= other.high.x + margin && other.low.x <= high.x + margin && low.y <= other.high.y + margin &&
         other.low.y <= high.y + margin;
}

Box Box::grown(double margin) const { return {{low.x - margin, low.y - margin}, {high.x + margin, high.y + margin}}; }

Box bounds(const CurveSegment& segment) {
  Box box;
  box.add(segment.a);
  box.add(segment.b);
  if (!segment.is_arc()) return box;
  const Point reach[4] = {{segment.radius, 0}, {0, segment.radius}, {-segment.radius, 0}, {0, -segment.radius}};
  for (int quarter = 0; quarter < 4; ++quarter)
    if (passes(segment, quarter * pi / 2)) box.add(segment.centre + reach[quarter]);
  return box;
}

Box bounds(const Loop& loop) {
  Box box;
  for (const CurveSegment& segment : loop) {
    const Box part = bounds(segment);
    box.add(part.low);
    box.add(part.high);
  }
  return box;
}

}  // namespace sagitta
