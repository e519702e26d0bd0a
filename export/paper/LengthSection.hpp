#pragma once

/// A section of the finished board along its centre line. Lengths in mm, heights above the glue face.

#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

struct LengthSection {
  struct Slot {
    int fret = 0;
    double x = 0, width = 0, floor = 0;
  };
  /// What is cut on the centre line besides slots and scallops: pockets and the builder's own cuts.
  struct Recess {
    double from = 0, to = 0;
    double low = 0, high = 0;  ///< between which heights the wood is away
  };
  struct Trough {
    int fret = 0;                 ///< the one that ends the space
    double x = 0, depth = 0;      ///< of its middle, below the surface without it
    double left = 0;              ///< thickness in the trough on the centre line
    double left_at_edge[2] = {};  ///< at the edges at negative and positive y
  };
  std::vector<Point> top;   ///< x and height of the playing surface, from the nut end to the body end
  std::vector<Slot> slots;  ///< those that cross the centre line
  std::vector<Recess> recesses;
  std::vector<Trough> troughs;     ///< one for each scalloped space
  double fall_from = 0, fall = 0;  ///< where the surface begins to fall, and by how much it falls
  double start() const { return top.front().x; }
  double end() const { return top.back().x; }
};

/// Whether there is anything to see: the board is scalloped or falls away.
bool is_shaped_along(const PreparedBoard& ready);
LengthSection length_section_of(const PreparedBoard& ready);

}  // namespace sagitta
