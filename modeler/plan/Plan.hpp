#pragma once

/// The plan of a stage: a planar subdivision whose cells each carry the surface that bounds the wood from above and
/// from below. Vertices, edges and cells are plain values; lengths in mm, board's frame.

#include <compare>
#include <string>
#include <variant>
#include <vector>

#include "layout/Layout.hpp"
#include "plan/Stage.hpp"
#include "plan/Subdivision.hpp"
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

/// Height of a bound at p; the part (fallen or not) is taken from the bound, not from p.
double height(const Surface& surface, const Bound& bound, Point p);

struct Cell {
  Bound top, bottom;          ///< top.kind none: no wood
  int feature = -1;  ///< index into Plan::features of the cut whose floor the top is; -1: no cut's
};

/// Something that shapes the wood, for names and for `Source::feature`.
struct FeatureName {
  Source::Kind kind = Source::Kind::outline;
  std::string name;  ///< "fret 7 slot", "inlay 1 at fret 3"
};

/// A flat-bottomed hole in the bass edge's wall, square to it.
struct SideHole {
  int feature = -1;        ///< index into Plan::features
  Point mouth, inward;     ///< on the wood's edge; unit vector
  double z = 0;            ///< height of its middle line
  double radius = 0, depth = 0;
  bool clear = true;       ///< meets nothing but the side wall: wood on all sides of it
};

struct Plan {
  Stage stage = Stage::board;
  Surface surface;
  Subdivision map;                 ///< faces of the map are the cells
  std::vector<Cell> cells;         ///< one a face; cell 0 is the outside
  std::vector<FeatureName> features;
  std::vector<SideHole> side_holes;
  Faults notes;                    ///< cuts that touch and were drawn back, in words
};

/// The plan of one stage of a board whose layout and surface are free of faults.
/// Faults: features that cannot be built, with the reason.
std::variant<Plan, Faults> make_plan(const Board& board, const Layout& layout, const Surface& surface, Stage stage);

}  // namespace sagitta
