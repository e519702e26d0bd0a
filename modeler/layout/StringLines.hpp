#pragma once

/// The middle lines of the strings.

#include "layout/Layout.hpp"

namespace sagitta {

/// Middle lines of the strings, bass first, from x = 0 to the mean scale. The outer strings' middles lie
/// the spread apart. `equal_centres`: equal distances from a course's middle to the next one's; `equal_gaps`: equal air
/// between the facing strings of neighbouring courses, of the given gauges; both at nut and saddle. Within a course
/// strings lie course_gap apart, middle to middle, at both. Adds faults when gauges are missing, when strings do not
/// fit side by side, or when courses are not further apart than the strings of one.
std::vector<LineSegment> place_strings(const Board& board, const Layout& layout, Faults& faults);

}  // namespace sagitta
