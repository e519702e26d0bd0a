#pragma once

/// Whether a board can be exported as it is ordered, whoever orders it: the command line, a manifest or the window.

#include <stdexcept>

#include "package/ExportOrder.hpp"

namespace sagitta {

/// The order asks for what cannot be made of this board; what() says what can.
struct OrderError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// How far triangles may stray from the exact surface, mm.
inline constexpr double least_deviation = 0.0001, most_deviation = 1;
/// How much room pieces that are made again may have in their pockets, mm.
inline constexpr double least_clearance_again = 0, most_clearance_again = 1;

/// Throws OrderError: a deviation or clearance out of its range, a clearance without pieces, a stage, an assembly or a
/// set-up that the board has not, dowels that its waste has no room for.
void judge_order(const PreparedBoard& ready, const ExportOrder& order);

}  // namespace sagitta
