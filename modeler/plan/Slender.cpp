#include "plan/Slender.hpp"

namespace sagitta {

double area(const Subdivision& map, int face) {
  double twice = 0;
  for (const HalfEdge start : map.faces[face].loops) {
    const Point origin = map.vertices[map.origin(start)];
    HalfEdge h = start;
    do {
      const PlanEdge& edge = map.edges[h >> 1];
      double swept = cross(map.vertices[edge.from] - origin, map.vertices[edge.to] - origin);
      if (edge.segment.is_arc()) {
        const double r = edge.segment.radius, w = edge.segment.sweep;
        swept += r * r * (w - std::sin(w));
      }
      twice += h & 1 ? -swept : swept;
      h = map.next[h];
    } while (h != start);
  }
  return twice / 2;
}

double mean_width(const Subdivision& map, int face) {
  double perimeter = 0;
  for (const HalfEdge start : map.faces[face].loops) {
    HalfEdge h = start;
    do {
      perimeter += map.edges[h >> 1].segment.length();
      h = map.next[h];
    } while (h != start);
  }
  return perimeter > 0 ? 2 * std::abs(area(map, face)) / perimeter : 0;
}

}  // namespace sagitta
