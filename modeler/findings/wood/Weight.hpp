#pragma once

/// The weight of the board.

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// Volume between the glue face and the playing surface over an outline, mm^3, without any cut: the integral of the
/// height's closed antiderivative in y along the outline.
double volume_under(const Surface& surface, const Loop& outline);

/// In grams, by the materials' densities.
struct Weights {
  double blank = 0;
  /// The finished board with its pieces in: slots and nut seat taken out, pockets filled with their material. The
  /// binding counts as wood. Within a hundredth of the board's weight.
  double board = 0;
};
Weights weights_of(const PreparedBoard& ready);

}  // namespace sagitta
