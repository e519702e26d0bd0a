#pragma once

/// The surface under each string. Lengths in mm.

#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// One string from where it crosses the nut line to where it crosses the last fret (without frets, the heel end), or
/// the line where the surface begins to fall away.
struct StringRun {
  int string = 0;    ///< from the bass side, 0 is the bass string
  LineSegment line;  ///< nut to last fret
  double hump = 0;   ///< largest rise of the surface above a straight line between the two ends
  Point at;          ///< where
};

/// Bass first; empty without strings, or where the fall begins at the nut.
std::vector<StringRun> string_runs(const Layout& layout, const Surface& surface);

/// The radius at the heel (at the last fret, when surface.heel_at says so) with which a compound surface is straight
/// under every string: R(x)/R(0) = spread(x)/spread(0), the string law. 0 for strings that meet at the nut.
double humpless_radius(const PreparedBoard& ready);

/// neck.joint_fret, else the last fret.
int joint_fret(const PreparedBoard& ready);

/// Height above the glue face, at the saddle, of the plane that touches the frets' tops (without wire, the surface) on
/// the centre line, with the neck tilted back by `angle` (radians) about the glue face at x = joint. The fall-away is
/// left out.
double saddle_height(const Board& board, const Surface& surface, double angle, double from_joint_to_saddle);

}  // namespace sagitta
