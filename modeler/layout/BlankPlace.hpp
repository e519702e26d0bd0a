#pragma once

/// The place of the blank under the board.

#include "layout/Layout.hpp"

namespace sagitta {

/// Blank and strip from above, the blank's thickness. Measures that are not given leave 30 mm at each end, 12 mm at
/// each side and 0.8 mm above thickness and sanding. The layout must have its outline, and be mirrored already:
/// `blank.at` is measured from the lower left corner whatever the hand. Adds faults when the blank does not hold board
/// and strip.
void place_blank(const Board& board, Layout& layout, Faults& faults);

/// blank.thickness, with its default resolved. mm.
double blank_thickness(const Board& board);

}  // namespace sagitta
