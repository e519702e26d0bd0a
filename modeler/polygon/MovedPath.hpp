#pragma once

/// A polygon with every side moved by an offset.

#include "polygon/Grid.hpp"
#include "polygon/Region.hpp"

namespace sagitta {

namespace tolerance {
/// Chords may lie so far from an offset's arc: where a strip is nearly as wide as the cutter, an opening shifts its end
/// ten times as far. mm.
inline constexpr double offset_chords = 0.00005;
}  // namespace tolerance

/// The polygon with every side moved out by `by` (mm; in, when negative) and joined to the next: by an arc round an
/// outer corner; where the two sides meet at an inner one, or straight across where one is too short for that. Corners
/// of what stands for an arc are joined where the sides' lines meet, outer and inner ones. The path, on `fine_grid`,
/// may cross itself: the offset region is where its winding number is positive.
GridPath moved_out(const Polygon& drawn, double by);

}  // namespace sagitta
