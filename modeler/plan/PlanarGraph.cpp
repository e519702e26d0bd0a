#include "plan/PlanarGraph.hpp"

#include <algorithm>

#include "plane/Tolerance.hpp"

namespace sagitta {
CurveSegment arc_turning(Point a, Point b, double sweep) {
  const double rise = distance(a, b) * std::abs(sweep) / 8;
  if (rise <= tolerance::same) return line(a, b);
  const Point centre = between(a, b, 0.5) + (0.5 / std::tan(sweep / 2)) * left_of(b - a);
  const Point from = a - centre;
  return {a, b, centre, length(from), std::atan2(from.y, from.x), sweep};
}

CurveSegment part_between(const CurveSegment& whole, double from, double to, Point a, Point b) {
  if (!whole.is_arc()) return line(a, b);
  const auto on_circle = [&](Point p) { return std::abs(distance(p, whole.centre) - whole.radius) <= tolerance::same; };
  if (on_circle(a) && on_circle(b)) return arc_between(whole.centre, whole.radius, a, b, whole.sweep > 0);
  return arc_turning(a, b, (to - from) * whole.sweep);
}

void EdgeInserter::add(GraphEdge edge) {
  auto& twins = by_ends_[std::minmax(edge.from, edge.to)];
  for (const int e : twins) {
    GraphEdge& first = web_.edges[e];
    if (!together(first, edge)) continue;
    const int sign = first.from == edge.from ? 1 : -1;
    for (const Passing& passing : edge.passings) first.passings.push_back({passing.loop, sign * passing.sign});
    return;
  }
  twins.push_back(static_cast<int>(web_.edges.size()));
  web_.edges.push_back(std::move(edge));
}

bool EdgeInserter::together(const GraphEdge& a, const GraphEdge& b) const {
  const bool same_way = a.from == b.from;
  for (const double t : {0.5, 0.25, 0.75})
    if (distance(a.segment.at(t), b.segment.at(same_way ? t : 1 - t)) > apart_) return false;
  return true;
}

}  // namespace sagitta
