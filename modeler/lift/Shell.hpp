#pragma once

/// The plan lifted: the closed boundary of a stage as vertices, edges and faces with exact geometry described in plain
/// values, without any kernel. `solid/` turns it into B-Rep, `mesh/` into triangles.

#include "plan/Plan.hpp"

namespace sagitta {

struct ShellVertex {
  int plan_vertex = -1;
  Point p;
  double z = 0;
};

/// A lifted edge. Over a plan edge (upright = false) it runs from the plan edge's `from` to its `to` at the height of
/// `bound`; upright ones rise from `from` to `to` over one plan vertex.
struct ShellEdge {
  bool upright = false;
  int plan = -1;  ///< plan edge, or plan vertex when upright
  Bound bound;    ///< the surface it lies in, when not upright
  int from = -1, to = -1;  ///< ShellVertex indices
};

struct ShellUse {
  int edge = -1;
  bool forward = true;
};

/// A face: outer loop first; loops run with the wood's outside to the viewer and the face to their left.
struct ShellFace {
  enum class Kind { top, bottom, wall };
  Kind kind = Kind::top;
  Bound bound;      ///< top and bottom: the surface
  Source source;    ///< wall: the line or circle it stands on
  int wall_edge = -1;     ///< wall: a plan edge it stands on
  bool wall_left = true;  ///< wall: the wood lies left of that plan edge
  std::vector<std::vector<ShellUse>> loops;
  std::string name;  ///< "fret 7 slot, floor"
};

struct Shell {
  Plan plan;
  std::vector<ShellVertex> vertices;
  std::vector<ShellEdge> edges;
  std::vector<ShellFace> faces;
};

Shell lift(Plan plan);

}  // namespace sagitta
