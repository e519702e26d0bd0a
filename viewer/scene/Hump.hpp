#pragma once

/// The height of the surface under a string against a straight line.

#include <vector>

#include "surface/Surface.hpp"

namespace sagitta::viewer {

/// What the surface does under one string, against a straight line from the nut to the last fret (or to where the
/// fall-away begins). Lengths in mm.
struct Hump {
  std::vector<Point> places;  ///< along the string, evenly
  std::vector<double> line;   ///< height of the straight line there
  std::vector<double> rise;   ///< of the surface above the line; below it where negative
  std::size_t most = 0;       ///< index of the largest rise or hollow
};

/// Smaller humps are not drawn, mm: no straightedge and no fret file tells them from level.
inline constexpr double least_drawn_hump = 0.005;

/// One for each string, bass first; none on a board without frets.
std::vector<Hump> humps_of(const Layout& layout, const Surface& surface);

/// How many times higher humps are drawn, so that the largest stands about 8 mm: 1, 2 or 5 times a power of ten.
double hump_scale(const std::vector<Hump>& humps);

}  // namespace sagitta::viewer
