#pragma once

/// Vertices and edges added within the faces of a map that is being divided.

#include <vector>

#include "plan/Subdivision.hpp"

namespace sagitta {

class FaceEdges {
 public:
  /// `borders`: for each face its half-edges, as they were before anything was added.
  FaceEdges(Subdivision& divided, const std::vector<std::vector<HalfEdge>>& borders)
      : map(divided), borders_(borders) {}

  const std::vector<HalfEdge>& border(int face) const { return borders_[static_cast<std::size_t>(face)]; }
  bool holds(int face, Point p) const { return map.winds_about(border(face), p); }
  Box box(int face) const;
  /// A vertex within a face, listed in `nodes`; none beside a vertex of its border or one of the nodes.
  void add_vertex(int face, Point p, std::vector<int>& nodes);
  /// A straight edge between two vertices, not yet in the map.
  PlanEdge chord(int face, int from, int to) const;
  /// Whether the face's border has an edge between the chord's ends that passes `middle`.
  bool has(int face, const PlanEdge& chord, Point middle) const;

  Subdivision& map;

 private:
  const std::vector<std::vector<HalfEdge>>& borders_;
};

}  // namespace sagitta
