#pragma once

/// The rectangle around one piece of an inlay: it is turned with the piece and lies level, at the height that the
/// playing surface has in its middle. Lengths in mm, in the board's frame.

#include "plane/Plane.hpp"
#include "scene/Camera.hpp"

namespace sagitta::viewer {

struct InlayFrame {
  int inlay = 0, fret = 0;
  Point centre;
  Point along{1, 0}, up{0, 1};  ///< the piece's own directions, of length 1
  Point half;                   ///< half of its size along and up
  double growth = 1;            ///< its size against the first space's of its list
  float z = 0;

  /// -1 and 1 are the sides.
  Point at(double u, double v) const { return centre + u * half.x * along + v * half.y * up; }
  Vec in_space(Point p) const { return {static_cast<float>(p.x), static_cast<float>(p.y), z}; }
};

}  // namespace sagitta::viewer
