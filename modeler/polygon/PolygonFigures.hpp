#pragma once

/// Figures of one polygon of a region. Lengths in mm.

#include "polygon/Region.hpp"

namespace sagitta {

/// Adds the area that a polygon bounds, mm^2: negative for a hole.
inline void add_area(const Polygon& polygon, double& sum) {
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i)
    sum += cross(polygon[i] - polygon[0], polygon[i + 1 < n ? i + 1 : 0] - polygon[0]) / 2;
}

/// The area that a polygon bounds, mm^2: negative for a hole.
inline double area(const Polygon& polygon) {
  double sum = 0;
  add_area(polygon, sum);
  return sum;
}

inline void add(const Polygon& polygon, Box& box) {
  for (const Point p : polygon) box.add(p);
}

inline Box bounds(const Polygon& polygon) {
  Box box;
  add(polygon, box);
  return box;
}

}  // namespace sagitta
