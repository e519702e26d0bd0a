#include "plan/FaceEdges.hpp"

#include <algorithm>

#include "plane/Tolerance.hpp"

namespace sagitta {

Box FaceEdges::box(int face) const {
  Box all;
  for (const HalfEdge h : border(face)) {
    const PlanEdge& edge = map.edges[h >> 1];
    all.add(map.vertices[map.origin(h)]);
    if (!edge.segment.is_arc()) continue;
    const Box arc = bounds(edge.segment);
    all.add(arc.low);
    all.add(arc.high);
  }
  return all;
}

void FaceEdges::add_vertex(int face, Point p, std::vector<int>& nodes) {
  const auto same = [&](int v) { return distance(map.vertices[v], p) <= 10 * tolerance::vertex; };
  const auto starts = [&](HalfEdge h) { return same(map.origin(h)); };
  if (!holds(face, p) || std::any_of(nodes.begin(), nodes.end(), same)) return;
  if (std::any_of(border(face).begin(), border(face).end(), starts)) return;
  nodes.push_back(static_cast<int>(map.vertices.size()));
  map.vertices.push_back(p);
}

PlanEdge FaceEdges::chord(int face, int from, int to) const {
  PlanEdge edge;
  edge.from = from;
  edge.to = to;
  edge.left = edge.right = face;
  edge.source = {Source::Kind::crossing, 0, 0};
  edge.segment = line(map.vertices[from], map.vertices[to]);
  return edge;
}

bool FaceEdges::has(int face, const PlanEdge& chord, Point middle) const {
  for (const HalfEdge h : border(face)) {
    const PlanEdge& edge = map.edges[h >> 1];
    if (std::minmax(edge.from, edge.to) != std::minmax(chord.from, chord.to)) continue;
    if (distance(map.at(edge, 0.5), middle) <= 2 * tolerance::vertex) return true;
  }
  return false;
}

}  // namespace sagitta
