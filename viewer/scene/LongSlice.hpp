#pragma once

/// The wood of a stage cut upright along the board. Lengths in mm.

#include <optional>
#include <vector>

#include "layout/Layout.hpp"
#include "neck/NeckShape.hpp"
#include "prepared/PreparedBoard.hpp"
#include "scene/Slice.hpp"

namespace sagitta::viewer {

/// Where an upright plane through the line meets the wood: x is the board's x, y is z.
std::vector<SliceLine> long_slice(const Mesh& mesh, const LineSegment& along);

/// The same with the board bent by the relief: what lies between nut and joint is lowered as the fret tops are.
std::vector<SliceLine> bent(const std::vector<SliceLine>& lines, const PreparedBoard& board);

/// The gap between the board's glue face and the neck's at one x of an edge.
struct GapStation {
  double x = 0, gap = 0;  ///< positive: the neck lies lower
};

/// One long edge of the board.
struct EdgeView {
  int side = 0;                      ///< 0 at negative y, 1 at positive y
  std::vector<SliceLine> wall;       ///< of the wood just inside the edge; with binding just inside its ledge
  std::vector<SliceLine> ledge;      ///< of the wood just inside the edge under the binding; empty without binding
  std::vector<Point> top;            ///< x and z of the wall's upper end
  std::vector<Point> worked;         ///< where a roll or bevel begins; empty where the edge is plain
  std::vector<GapStation> gap;       ///< by rising x; empty where no neck was measured
  double widest_at = 0, widest = 0;  ///< of the gap
};

EdgeView edge_view(const PreparedBoard& board, const StageModel& stage, int side, const NeckReading* neck);

/// The side of the edge that lies beside the lowest string: 1 on a left-handed board.
int bass_side(const Layout& layout);

/// Height of the highest wood at x, or nothing where the lines end.
std::optional<double> highest_at(const std::vector<SliceLine>& lines, double x);

}  // namespace sagitta::viewer
