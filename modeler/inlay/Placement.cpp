#include "inlay/Placement.hpp"

#include <algorithm>

namespace sagitta {

Point Placement::operator()(Point p) const {
  Point q = turn == 0 ? p : turned(p, turn);
  if (mirrored) q.y = -q.y;
  return q + centre;
}

Loops Placement::operator()(const Loops& loops) const {
  Loops placed;
  placed.reserve(loops.size());
  for (const Loop& loop : loops) {
    Loop& image = placed.emplace_back();
    image.reserve(loop.size());
    for (const CurveSegment& segment : loop) {
      const Point a = (*this)(segment.a), b = (*this)(segment.b);
      const bool left = (segment.sweep > 0) != mirrored;
      CurveSegment moved =
          segment.is_arc() ? arc_between((*this)(segment.centre), segment.radius, a, b, left) : line(a, b);
      image.push_back(mirrored ? moved.reversed() : moved);
    }
    if (mirrored) std::reverse(image.begin(), image.end());
  }
  return placed;
}

Region Placement::back(const Region& region) const {
  Region own = region;
  for (Polygon& polygon : own) {
    for (Point& p : polygon) {
      p = p - centre;
      if (mirrored) p.y = -p.y;
      p = turned(p, -turn);
    }
    if (mirrored) std::reverse(polygon.begin(), polygon.end());
  }
  return own;
}

Region Placement::operator()(const Region& region) const {
  Region placed = region;
  for (Polygon& polygon : placed) {
    for (Point& p : polygon) p = (*this)(p);
    if (mirrored) std::reverse(polygon.begin(), polygon.end());
  }
  return placed;
}

}  // namespace sagitta
