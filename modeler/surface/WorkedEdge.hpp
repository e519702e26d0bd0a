#pragma once

/// A long edge that is rolled or bevelled. Lengths in mm.

namespace sagitta {

/// The edge's line, y = side (at + slope x), and what is made along it. In each section square to the centre line a
/// roll is the arc that is tangent to the upright line there and to the playing arc; a bevel is the line that falls
/// from the playing arc, `bevel` inside the edge, by `steepness` for each mm. T is double or a jet.
struct WorkedEdge {
  int side = 1;  ///< of the centre line
  double at = 0, slope = 0;
  double roll = 0;                  ///< radius; 0 where the edge is bevelled
  double bevel = 0, steepness = 0;  ///< 0 where it is rolled

  /// The edge's distance from the centre line.
  template <class T>
  T reach(T x) const {
    return at + slope * x;
  }
  friend bool operator==(const WorkedEdge&, const WorkedEdge&) = default;
};

}  // namespace sagitta
