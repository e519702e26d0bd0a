#pragma once

/// Volume of a stage with scallops and worked edges, by adaptive quadrature of heights: at each place the lowest of all
/// floors. Written from the board file's rules; depends on Layout and Surface's plain law only.

#include "oracle/Work.hpp"

namespace sagitta::oracle {

/// A space between two slots' middles, less the lands; one edge of the board.
struct Trough {
  Point low, high;             ///< where the two lines cross y = 0
  double low_lean, high_lean;  ///< dx/dy
  double depth;
};

/// What is lower than the playing surface.
struct Forms {
  std::vector<Trough> troughs;
  bool edges = false;  ///< both long edges are worked at this stage
  double roll = 0, bevel = 0, angle = 0;
};

Forms forms_at(const Board& board, const Layout& layout, Stage stage);

/// Side holes are taken from the wood without forms: a board whose forms leave less than 0.3 mm over one is refused.
double height_volume(const Board& board, const Layout& layout, const Surface& surface, Stage stage);

}  // namespace sagitta::oracle
