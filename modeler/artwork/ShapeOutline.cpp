#include "artwork/ShapeOutline.hpp"

#include <algorithm>

namespace sagitta {
namespace {

bool contains(const Box& box, Point p) {
  return p.x >= box.low.x && p.x <= box.high.x && p.y >= box.low.y && p.y <= box.high.y;
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

}  // namespace

double distance_to_chord(Point a, Point b, Point p) {
  const Point along = b - a;
  const double square = dot(along, along);
  const double t = square > 0 ? std::clamp(dot(p - a, along) / square, 0.0, 1.0) : 0;
  return distance(p, between(a, b, t));
}

bool holds(const Box& outer, const Box& inner) { return contains(outer, inner.low) && contains(outer, inner.high); }

Outline make_outline(PathLoop strokes, double chord) {
  Outline outline;
  outline.area = area(strokes);
  for (const PathSegment& stroke : strokes) flatten(stroke, chord, outline.corners);
  for (const Point corner : outline.corners) outline.box.add(corner);
  outline.strokes = std::move(strokes);
  return outline;
}

Outline reversed(const Outline& outline) {
  Outline back = outline;
  std::reverse(back.strokes.begin(), back.strokes.end());
  for (PathSegment& stroke : back.strokes) stroke = reversed(stroke);
  std::reverse(back.corners.begin(), back.corners.end() - 1);
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

Point witness(const Outline& inner, const Outline& outer, double clear) {
  constexpr std::size_t tries = 12;
  const std::size_t count = inner.corners.size(), step = std::max<std::size_t>(1, count / tries);
  Point best = inner.corners.front();
  double most = -1;
  for (std::size_t i = 0; i < count && most < clear; i += step) {
    const Point p = between(inner.corners[i], inner.corners[(i + 1) % count], 0.5);
    const double away = distance(outer, p);
    if (away <= most) continue;
    most = away;
    best = p;
  }
  return best;
}

bool same_outline(const Outline& a, const Outline& b, double touch) {
  const std::size_t count = a.corners.size();
  if (b.corners.size() != count || distance(a.box.low, b.box.low) > touch || distance(a.box.high, b.box.high) > touch)
    return false;
  const auto agree = [&](std::size_t from, bool forward) {
    for (std::size_t i = 0; i < count; ++i) {
      const std::size_t j = forward ? from + i : from + count - i;
      if (distance(a.corners[i], b.corners[j % count]) > touch) return false;
    }
    return true;
  };
  for (std::size_t from = 0; from < count; ++from)
    if (distance(a.corners[0], b.corners[from]) <= touch && (agree(from, true) || agree(from, false))) return true;
  return false;
}

}  // namespace sagitta
