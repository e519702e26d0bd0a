#pragma once

/// The plan of a stage: a planar subdivision whose cells each carry the surface that bounds the wood from above and
/// from below. Vertices, edges and cells are plain values; lengths in mm, board's frame.

#include <string>
#include <variant>
#include <vector>

#include "layout/Layout.hpp"
#include "plan/Stage.hpp"
#include "plane/Plane.hpp"
#include "surface/Surface.hpp"

namespace sagitta {

/// A surface that bounds a cell from above or below.
struct Bound {
  enum class Kind { none, level, arc };
  Kind kind = Kind::none;  ///< none: no wood here
  double value = 0;        ///< level: its height z; arc: how far the playing surface is moved down (negative: up)
  bool fallen = false;     ///< arc: the part beyond the line where the fall-away begins
  friend auto operator<=>(const Bound&, const Bound&) = default;
};

/// Height of a bound at p.
double height(const Surface& surface, const Bound& bound, Point p);

/// What drew an edge of the plan; edges with equal sources lie on one line or circle.
struct Source {
  enum class Kind { blank, strip, outline, slot, nut, pocket, binding, pin, fall, crossing };
  Kind kind = Kind::outline;
  int feature = 0;  ///< slot, pocket, pin: index in its list
  int piece = 0;    ///< which piece of that feature's outline
  friend auto operator<=>(const Source&, const Source&) = default;
};

/// An edge of the plan between two vertices, with the cells on its sides.
struct PlanEdge {
  int from = -1, to = -1;   ///< vertices
  Piece piece;              ///< line or arc; for a crossing curve the chord, see `crossing`
  int crossing = -1;        ///< index into Plan::crossings, -1 for a line or an arc
  int left = -1, right = -1;  ///< cells; -1 outside everything
  Source source;
};

/// Where a level floor meets the playing surface moved down: y^2 = delta (2 R - delta), delta = crown - drop - level.
struct Crossing {
  double level = 0;     ///< height of the floor
  double offset = 0;    ///< how far the surface is moved down
  bool fallen = false;
  int side = 1;         ///< +1: y >= 0, -1: y <= 0
};

struct Cell {
  Bound top, bottom;      ///< top.kind none: no wood
  std::vector<int> features;  ///< features that lie over the cell, for names
};

struct Plan {
  Stage stage = Stage::board;
  Surface surface;
  std::vector<Point> vertices;
  std::vector<PlanEdge> edges;
  std::vector<Cell> cells;
  std::vector<Crossing> crossings;
  std::vector<std::string> notes;  ///< cuts that touch and were drawn back, in words
};

}  // namespace sagitta
