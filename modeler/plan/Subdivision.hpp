#pragma once

/// A planar subdivision: vertices, edges that meet only at vertices, and the faces between them. An edge is a line, an
/// arc, or an intersection curve of two height functions. Lengths in mm.

#include <compare>
#include <memory>
#include <optional>
#include <vector>

#include "plan/BoundingSurface.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

/// What drew an edge: feature and which segment of its outline.
struct Source {
  enum class Kind {
    blank,
    strip,
    outline,
    slot,
    nut,
    pocket,
    binding,
    pin,
    side_dot,
    fall,
    crossing,
    cut,
    scallop,
    worked_edge
  };
  Kind kind = Kind::outline;
  int feature = 0;  ///< index into the plan's features
  int segment = 0;  ///< which segment of that feature's outline
  friend auto operator<=>(const Source&, const Source&) = default;
};

/// A curve y = side * sqrt(f(x)) or, with `upright`, the straight line x = const: where a level floor meets the playing
/// surface moved down by `offset`, f = delta (2 R - delta), delta = crown - offset - level.
struct IntersectionCurve {
  double level = 0;   ///< height of the floor, mm
  double offset = 0;  ///< how far the surface is moved down, mm
  bool fallen = false;
  int side = 1;           ///< +1: y >= 0, -1: y <= 0
  bool straight = false;  ///< f is constant, or the surface is flat: a straight line
  /// Coefficients of delta(x) = d0 + d1 x and R(x) = r0 + r1 x + r2 x^2.
  double d0 = 0, d1 = 0, r0 = 0, r1 = 0, r2 = 0;

  /// A side hole's wall that meets a moved surface instead: `level` is 0, `side` +1 for its vault, -1 for its trough.
  std::optional<Tunnel> tunnel;
  double axis = 0;    ///< height of the hole's axis, mm
  bool flat = false;  ///< the moved surface is a plane

  /// Any other two surfaces: the curve is followed where their heights are equal. Without a tunnel x and y both rise,
  /// or one falls, all along each edge of it; with one, `side` is +1 and the curve is followed on the wall rolled out.
  std::shared_ptr<const SurfacePair> meeting;

  double square(double x) const { return (d0 + d1 * x) * (2 * (r0 + x * (r1 + x * r2)) - (d0 + d1 * x)); }
  /// Where the edge from a to b passes x.
  double y(Point a, Point b, double x) const;
  /// The point at t in [0, 1] of the segment from a to b; smooth at a tip (y = 0) too.
  Point at(Point a, Point b, double t) const;
};

struct PlanEdge {
  int from = -1, to = -1;   ///< vertices
  CurveSegment segment;     ///< line or arc; for an intersection curve its chord
  int crossing = -1;        ///< index into Subdivision::crossings, -1 for a line or an arc
  int left = 0, right = 0;  ///< faces; 0 is the outside
  Source source;
};

/// A half-edge is 2 * edge, or 2 * edge + 1 when it runs from `to` to `from`.
using HalfEdge = int;

struct Face {
  std::vector<HalfEdge> loops;  ///< one half-edge of each boundary loop, the outer loop first (face 0 has none)
};

struct Subdivision {
  std::vector<Point> vertices;
  std::vector<PlanEdge> edges;
  std::vector<IntersectionCurve> crossings;
  std::vector<HalfEdge> next;                ///< the half-edge that follows in the loop of the face to the left
  std::vector<HalfEdge> next_around_vertex;  ///< the next half-edge counter-clockwise about the same origin
  std::vector<Face> faces;

  int origin(HalfEdge h) const { return h & 1 ? edges[h >> 1].to : edges[h >> 1].from; }
  int target(HalfEdge h) const { return origin(h ^ 1); }
  int face(HalfEdge h) const { return h & 1 ? edges[h >> 1].right : edges[h >> 1].left; }
  /// The point at t in [0, 1] of an edge.
  Point at(const PlanEdge& edge, double t) const;
  /// Whether the closed boundary of these half-edges (face to their left) is around p.
  bool winds_about(const std::vector<HalfEdge>& border, Point p) const;
  /// Builds next_around_vertex, next, faces, left and right from vertices and edges.
  void build_faces();
};

}  // namespace sagitta
