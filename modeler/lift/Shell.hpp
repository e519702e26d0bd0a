#pragma once

/// The plan lifted: the closed boundary of a stage as vertices, edges and faces with exact geometry described in plain
/// values, without any kernel. `solid/` turns it into B-Rep, `mesh/` into triangles.

#include <string>
#include <vector>

#include "plan/Plan.hpp"

namespace sagitta {

struct ShellVertex {
  Point p;
  double z = 0;
};

/// A lifted edge, from one vertex to another. Over plan edges it follows `segment` (or the intersection curve) at the
/// height of `bound`; an upright one rises over one plan vertex.
struct ShellEdge {
  int from = -1, to = -1;
  bool upright = false;
  BoundingSurface bound;          ///< the surface it lies in, when not upright
  CurveSegment segment;           ///< its line or arc from above; the first of `run`
  std::vector<CurveSegment> run;  ///< arcs with one tangent that are one edge, `from` to `to`; empty: `segment` alone
  std::optional<OffsetEllipse> ellipse;  ///< what `run` stands for, where that is one
  int crossing = -1;                     ///< index into the map's crossings; -1 for a line or an arc
  std::vector<HalfEdge> chain;           ///< the plan's half-edges below it, in order; empty when upright
};

struct Coedge {
  int edge = -1;
  bool forward = true;
  friend bool operator==(const Coedge&, const Coedge&) = default;
};

/// A wall over one plan edge, between two heights.
struct WallStrip {
  int plan_edge = -1;
  BoundingSurface low, high;
};

/// A face: outer loop first. Seen from outside the wood the face lies to the left of its loops.
struct ShellFace {
  enum class Kind { top, bottom, wall };  ///< looks up, looks down, upright
  Kind kind = Kind::top;
  BoundingSurface bound;          ///< top and bottom: the surface, a hole's trough and vault among them
  CurveSegment segment;           ///< wall: a segment that it stands on
  std::vector<CurveSegment> run;  ///< smooth wall: all of them in order, `segment` first; its edges run the same way
  std::optional<OffsetEllipse> ellipse;  ///< smooth wall: what `run` stands for, where that is one
  bool wood_left = true;                 ///< wall: the wood lies left of that segment
  std::vector<WallStrip> strips;         ///< wall: the same again, one plan edge at a time
  int feature = -1;  ///< index into Plan::features of the cut it belongs to; -1: the board's own faces
  std::vector<std::vector<Coedge>> loops;
};

struct Shell {
  Plan plan;
  std::vector<ShellVertex> vertices;
  std::vector<ShellEdge> edges;
  std::vector<ShellFace> faces;

  int start(Coedge use) const { return use.forward ? edges[use.edge].from : edges[use.edge].to; }
  int end(Coedge use) const { return use.forward ? edges[use.edge].to : edges[use.edge].from; }
  /// The point at t in [0, 1] of an edge from above (its height: `bound`, or between the ends when upright).
  Point at(const ShellEdge& edge, double t) const;
  /// Places along an edge from above, near enough to each other to tell how far it reaches: both ends, and the quarters
  /// of each of its segments.
  std::vector<Point> places(const ShellEdge& edge) const;
};

/// Lifts a plan without any boolean: each cell a face at its height, each edge between two heights an upright wall.
/// Cells that share a surface and walls that stand on one line or arc side by side become one face, as do those of
/// drawn cuts on arcs that follow each other with one tangent. A side hole's round wall is two faces, its trough and
/// its vault.
Shell lift(Plan plan);

/// What a face belongs to.
FeatureId id_of(const Shell& shell, const ShellFace& face);
/// The same in the trade's words: "fret 7 slot", "playing surface", "glue face", "edge".
std::string name(const Shell& shell, const ShellFace& face);

/// Handles of the closed shell, by Euler's formula V - E + F - (L - F) = 2 (1 - g); shells counted as one.
int genus(const Shell& shell);

/// Empty when every edge is used once each way and every loop closes; else what is wrong, for a developer.
std::string unsound(const Shell& shell);

}  // namespace sagitta
