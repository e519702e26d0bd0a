#include "artwork/Outline.hpp"

#include <algorithm>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

bool contains(const Box& box, Point p) {
  return p.x >= box.low.x && p.x <= box.high.x && p.y >= box.low.y && p.y <= box.high.y;
}

bool holds(const Box& outer, const Box& inner) { return contains(outer, inner.low) && contains(outer, inner.high); }

double distance_to_chord(Point a, Point b, Point p) {
  const Point along = b - a;
  const double square = dot(along, along);
  const double t = square > 0 ? std::clamp(dot(p - a, along) / square, 0.0, 1.0) : 0;
  return distance(p, between(a, b, t));
}

bool filled(int turns, FillRule rule) { return rule == FillRule::nonzero ? turns != 0 : turns % 2 != 0; }

}  // namespace

Outline make_outline(StrokeLoop strokes) {
  Outline outline;
  outline.area = area(strokes);
  outline.box = bounds(strokes);
  for (const Stroke& stroke : strokes) flatten(stroke, tolerance::drawn_chord, outline.corners);
  outline.strokes = std::move(strokes);
  return outline;
}

Outline reversed(const Outline& outline) {
  Outline back = outline;
  std::reverse(back.strokes.begin(), back.strokes.end());
  for (Stroke& stroke : back.strokes) stroke = reversed(stroke);
  std::reverse(back.corners.begin(), back.corners.end());
  back.area = -outline.area;
  return back;
}

int winding(const Outline& outline, Point p) {
  if (!contains(outline.box, p)) return 0;
  int turns = 0;
  Point a = outline.corners.back();
  for (const Point b : outline.corners) {
    if ((a.y <= p.y) != (b.y <= p.y)) {
      const double side = cross(b - a, p - a);
      if (b.y > a.y && side > 0) ++turns;
      if (b.y < a.y && side < 0) --turns;
    }
    a = b;
  }
  return turns;
}

double distance(const Outline& outline, Point p) {
  double least = 1e300;
  Point a = outline.corners.back();
  for (const Point b : outline.corners) {
    least = std::min(least, distance_to_chord(a, b, p));
    a = b;
  }
  return least;
}

Point witness(const Outline& inner, const Outline& outer) {
  constexpr std::size_t tries = 12;
  const std::size_t count = inner.corners.size(), step = std::max<std::size_t>(1, count / tries);
  Point best = inner.corners.front();
  double clear = -1;
  for (std::size_t i = 0; i < count && clear < 10 * tolerance::drawn_chord; i += step) {
    const Point p = between(inner.corners[i], inner.corners[(i + 1) % count], 0.5);
    const double away = distance(outer, p);
    if (away > clear) {
      clear = away;
      best = p;
    }
  }
  return best;
}

DrawnRegion nested(const Shape& shape) {
  DrawnRegion region{shape.colour, {}};
  for (const Outline& outline : shape.outlines) {
    int around = 0;
    for (const Outline& other : shape.outlines)
      if (&other != &outline && holds(other.box, outline.box)) around += winding(other, witness(outline, other));
    const bool outside = filled(around, shape.rule);
    const bool inside = filled(around + (outline.area > 0 ? 1 : -1), shape.rule);
    if (outside == inside) continue;
    const bool as_drawn = inside == (outline.area > 0);
    region.outlines.push_back(as_drawn ? outline.strokes : reversed(outline).strokes);
  }
  return region;
}

}  // namespace sagitta
