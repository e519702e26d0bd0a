#pragma once

/// Curves of a stage that a CAM program can follow without picking faces: middle lines of slots, edges of pockets.

#include <string>
#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// A piece of a line, lying in the surface that `bound` names.
struct GuidePiece {
  CurveSegment segment;
  BoundingSurface bound;
};

/// A line for a CAM package to follow without picking faces: pieces head to tail.
struct GuideLine {
  std::string name;   ///< "fret 7 slot"
  std::string layer;  ///< "slot middle lines", "pockets" or "outline"
  std::vector<GuidePiece> pieces;
};

/// The lines of what has been cut at a stage: the middle line of every slot's floor (of a blind slot between the
/// middles of its round ends, elsewhere from side to side of the wood), the outline of every pocket's floor; and the
/// board's outline at the glue face, at every stage.
std::vector<GuideLine> guide_lines(const PreparedBoard& ready, Stage stage);

}  // namespace sagitta
