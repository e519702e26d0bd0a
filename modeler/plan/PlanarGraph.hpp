#pragma once

/// A planar graph without faces: points, the lines and arcs between them, and the outlines that use each.

#include <map>
#include <utility>
#include <vector>

#include "plan/Subdivision.hpp"

namespace sagitta {

/// An outline that runs along an edge.
struct Passing {
  int loop = -1;
  int sign = 0;  ///< +1: the loop runs with the edge, -1: against it
};

struct GraphEdge {
  int from = -1, to = -1;  ///< points
  CurveSegment segment;
  Source source;
  std::vector<Passing> passings;
};

struct PlanarGraph {
  std::vector<Point> points;
  std::vector<GraphEdge> edges;
};

/// The part of a segment between its parameters `from` and `to`, changed so that it ends exactly in a and b: an arc
/// keeps its circle where both points lie on it within tolerance::same, otherwise it keeps its angle.
CurveSegment part_between(const CurveSegment& whole, double from, double to, Point a, Point b);

/// The arc from a to b that turns by `sweep` (radians, not 0 modulo a whole turn); a line where it is straight within
/// tolerance.
CurveSegment arc_turning(Point a, Point b, double sweep);

/// Adds edges to a web. Edges with the same ends that are nowhere further apart than `apart` become one, with the
/// source of the first.
class EdgeInserter {
 public:
  EdgeInserter(PlanarGraph& web, double apart) : web_(web), apart_(apart) {}
  void add(GraphEdge edge);

 private:
  bool together(const GraphEdge& a, const GraphEdge& b) const;

  PlanarGraph& web_;
  double apart_;
  std::map<std::pair<int, int>, std::vector<int>> by_ends_;
};

}  // namespace sagitta
