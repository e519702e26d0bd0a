#pragma once

/// The lines along which faces are cut into bands before they are triangulated.

#include <vector>

#include "mesh/EdgePolyline.hpp"

namespace sagitta {

/// Points nearer to a band's line than this make way for it. mm.
inline constexpr double clear_of_points = 1e-3;

/// The y of lines over the plan, rising, floats: so close together that a chord from one to the next strays by `off`
/// (mm) from the playing surface, and at least one through every loop that is no side hole's, also where chords of the
/// loop's arcs lie up to `short_of_arc` (mm) within it. `vertices` are the plan's; lines keep clear of them.
std::vector<double> band_lines(const Shell& shell, const std::vector<PolylinePoint>& vertices, double off,
                               double short_of_arc);

/// Bands of a side hole's wall, whose chords stray by `off`; one more through every island in it: distances from its
/// axis.
std::vector<double> lines_across(const Shell& shell, const ShellFace& face, double off);

}  // namespace sagitta
