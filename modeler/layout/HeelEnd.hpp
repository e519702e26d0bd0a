#pragma once

/// The end at the body: straight or an arc, with its two corners rounded or not.

#include <optional>

#include "layout/Layout.hpp"
#include "layout/Taper.hpp"

namespace sagitta {

/// The end's pieces from the edge at negative y to the one at positive y, corner arcs included.
struct HeelEnd {
  Point low, high;  ///< where the edges end and the heel begins
  Loop pieces;      ///< with rounded corners, the first and the last are the corners' arcs
};

/// Empty, with faults added, when the arc does not reach both edges or the corners do not fit. `nut_low` and `nut_high`
/// are where the edges begin.
std::optional<HeelEnd> heel_end(const Board& board, const Layout& layout, const Taper& taper, Point nut_low,
                                Point nut_high, Faults& faults);

}  // namespace sagitta
