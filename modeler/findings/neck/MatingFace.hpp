#pragma once

/// The face of the board that is glued to the neck.

#include <optional>
#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// What of the board meets the neck, in the neck's frame: seen from above as the neck lies, x = 0 at the nut, x toward
/// the bridge, the centre line at y = 0, z = 0 the glue face. For drawing the neck to fit. Lengths in mm.
struct MatingFace {
  Loop outline;                      ///< of the board's glue face, finished
  LineSegment nut_line;              ///< fret 0, from edge to edge
  std::optional<LineSegment> joint;  ///< the joint fret, or the body end where only that is given
  std::vector<Pin> pins;
  std::optional<Loop> channel;  ///< as under [neck], no longer than the board
};

MatingFace mating_face(const PreparedBoard& ready);

}  // namespace sagitta
