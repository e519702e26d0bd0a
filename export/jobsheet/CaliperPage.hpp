#pragma once

/// What is measured by caliper on the board: what it should be, how far it may be off, and a line to write on. The same
/// places are keys of [measured].

#include "jobsheet/JobTable.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

JobTable caliper_page(const PreparedBoard& ready);

/// Where a fret's slot may lie off, and how far a thickness may be off, when it is measured by caliper. mm. Slots: "a
/// few thousandths" of an inch, not accumulating (common practice, no source); thickness: common practice, no source.
inline constexpr double slot_tolerance = 0.08, thickness_tolerance = 0.1;
/// Widths and the length; a slot's width; depths of slots and pockets, thickness of pieces. Common practice, no source.
inline constexpr double width_tolerance = 0.2, slot_width_tolerance = 0.02, depth_tolerance = 0.05;

}  // namespace sagitta
