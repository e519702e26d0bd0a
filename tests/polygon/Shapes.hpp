#pragma once

#include <numbers>

#include "polygon/Region.hpp"

/// Polygons whose areas and distances are known in closed form.
namespace sagitta::test {

inline Polygon rectangle_of(Point low, Point high) { return {low, {high.x, low.y}, high, {low.x, high.y}}; }
inline Polygon square(Point low, double size) { return rectangle_of(low, low + Point{size, size}); }
/// Clockwise, as holes are.
inline Polygon hole(const Polygon& polygon) { return {polygon.rbegin(), polygon.rend()}; }

/// So many corners on a circle, the first one east of the centre; counter-clockwise.
inline Polygon regular(int corners, double radius, Point centre = {}) {
  Polygon polygon;
  for (int i = 0; i < corners; ++i)
    polygon.push_back(centre + radius * turned({1, 0}, 2 * std::numbers::pi * i / corners));
  return polygon;
}
inline double regular_area(int corners, double radius) {
  return corners * radius * radius / 2 * std::sin(2 * std::numbers::pi / corners);
}

}  // namespace sagitta::test
