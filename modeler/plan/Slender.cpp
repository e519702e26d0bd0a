#include "plan/Slender.hpp"

namespace sagitta {

double mean_width(const Subdivision& map, int face) {
  double twice_area = 0, perimeter = 0;
  for (const HalfEdge start : map.faces[face].loops) {
    HalfEdge h = start;
    do {
      const PlanEdge& edge = map.edges[h >> 1];
      const Point a = map.vertices[edge.from], b = map.vertices[edge.to], origin = map.vertices[map.origin(start)];
      double swept = cross(a - origin, b - origin);
      if (edge.piece.is_arc()) {
        const double r = edge.piece.radius, w = edge.piece.sweep;
        swept += r * r * (w - std::sin(w));
      }
      twice_area += h & 1 ? -swept : swept;
      perimeter += edge.piece.length();
      h = map.next[h];
    } while (h != start);
  }
  return perimeter > 0 ? std::abs(twice_area) / perimeter : 0;
}

}  // namespace sagitta
