#pragma once

/// The middle lines of the strings.

#include "layout/Layout.hpp"

namespace sagitta {

/// Middle lines of the strings, bass first, from x = 0 to the mean scale. `equal_centres`: equal distances from middle
/// to middle; `equal_gaps`: equal air between neighbours of the given gauges, at nut and saddle. Adds faults when
/// gauges are missing or the strings do not fit side by side.
std::vector<LineSegment> place_strings(const Board& board, const Layout& layout, Faults& faults);

}  // namespace sagitta
