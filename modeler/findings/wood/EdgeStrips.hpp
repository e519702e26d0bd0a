#pragma once

/// The strips that are glued to the long edges: the binding and the lines beside it. Lengths in mm.

#include <string>
#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

struct EdgeStrip {
  int side = 0;          ///< FeatureId::lower or upper
  int line = -1;         ///< which line beside the binding, counted from it; -1: the binding itself
  std::string material;  ///< of a line
  double thickness = 0;  ///< square to the edge
  double height = 0;     ///< from the surface down; of a binding all the way, the edge's greatest
  double length = 0;     ///< on the finished board, along the strip's middle
};

/// For each edge the binding, then its lines; none without binding.
std::vector<EdgeStrip> edge_strips(const PreparedBoard& ready);

}  // namespace sagitta
