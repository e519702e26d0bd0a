#include "inlay/DrawnGap.hpp"

#include <algorithm>

#include "polygon/PolygonFigures.hpp"

namespace sagitta {
namespace {

constexpr double opposite = -0.985;  // greatest cosine between the directions of two sides of a gap: 10 degrees off
constexpr double exact = 0.0001;     // mm; of a hole's width

/// The hole as a region of its own.
Region filled_hole(const Polygon& hole) { return {Polygon(hole.rbegin(), hole.rend())}; }

/// The largest disc in a hole that a disc of `radius` does not enter.
Narrowest largest_in(const Region& hole, double radius) {
  double enters = 0, bars = radius;
  Region middles = hole;
  while (bars - enters > exact) {
    const double half = (enters + bars) / 2;
    Region left = offset(hole, -half);
    if (left.empty()) {
      bars = half;
    } else {
      enters = half;
      middles = std::move(left);
    }
  }
  const Box box = bounds(middles);
  return {2 * enters, between(box.low, box.high, 0.5)};
}

struct Side {
  Point a, b;
  Point way() const { return unit(b - a); }
};

/// The sides of the outline within `reach` of a point.
std::vector<Side> sides_near(const Region& region, Point p, double reach) {
  const Box near = Box{p, p}.grown(reach);
  std::vector<Side> found;
  for (const Polygon& polygon : region)
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Side side{polygon[i], polygon[i + 1 < polygon.size() ? i + 1 : 0]};
      Box box;
      box.add(side.a);
      box.add(side.b);
      if (box.overlaps(near) && distance(side.a, side.b) > 0) found.push_back(side);
    }
  return found;
}

void shorten(Point p, const Side& side, Narrowest& best) {
  const double size = distance(side.a, side.b);
  const Point q = side.a + std::clamp(dot(p - side.a, side.way()), 0.0, size) * side.way();
  if (distance(p, q) < best.width) best = {distance(p, q), between(p, q, 0.5)};
}

/// `rough` was found from the middles of sides: the shortest way there between two sides that face each other.
Narrowest between_sides(const Region& island, const Narrowest& rough) {
  Narrowest best = rough;
  const std::vector<Side> near = sides_near(island, rough.p, rough.width);
  for (std::size_t k = 0; k < near.size(); ++k)
    for (std::size_t i = 0; i < k; ++i) {
      if (dot(near[i].way(), near[k].way()) > opposite) continue;
      // Across what is outside: that lies to the right of the outline.
      if (dot(between(near[k].a, near[k].b, 0.5) - near[i].a, left_of(near[i].way())) > 0) continue;
      for (const Point p : {near[i].a, near[i].b}) shorten(p, near[k], best);
      for (const Point p : {near[k].a, near[k].b}) shorten(p, near[i], best);
    }
  return best;
}

}  // namespace

Narrowest drawn_gap(const Region& island, double cut) {
  Narrowest best = narrowest(island, false, cut, opposite);
  best = best.width < 1e299 ? between_sides(island, best) : best;
  if (best.width >= cut) best = {};
  for (const Polygon& hole : island) {
    if (area(hole) > 0) continue;
    const Region own = filled_hole(hole);
    if (!offset(own, -cut / 2).empty()) continue;
    if (const Narrowest narrow = largest_in(own, cut / 2); narrow.width < best.width) best = narrow;
  }
  return best;
}

}  // namespace sagitta
