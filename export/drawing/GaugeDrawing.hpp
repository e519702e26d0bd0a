#pragma once

/// Gauges in true size: the radius of the playing surface at four places, and the strings' places at nut and saddle.

#include <optional>
#include <string>
#include <vector>

#include "drawing/Drawing.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// A gauge that sits on the board: its lower side is the surface's arc there.
struct RadiusGauge {
  std::string name;  ///< "fret 12"
  double x = 0;      ///< on the board
  double radius = 0, width = 0;
};

/// At nut, fret 7, fret 12 and body end, those that the board has; none where the surface is flat.
std::vector<RadiusGauge> radius_gauges(const PreparedBoard& ready);

/// Its outline with the middle of the arc at `apex`, `height` high over it.
Loop gauge_outline(const RadiusGauge& gauge, Point apex, double height);

/// A strip of paper with a line for each string, 0 at the board's centre line; bass at the left on a right-handed
/// board.
struct StringStrip {
  std::string name;            ///< "nut", "saddle"
  std::vector<double> places;  ///< across, in the order of the strings from the bass
};
std::vector<StringStrip> string_strips(const PreparedBoard& ready);

/// From the strip's middle to its ends. mm.
double strip_reach(const StringStrip& strip);
inline constexpr double gauge_height = 16, strip_height = 12;  ///< mm

/// All of them one below the other; a layer each.
Drawing gauge_drawing(const PreparedBoard& ready);

}  // namespace sagitta
