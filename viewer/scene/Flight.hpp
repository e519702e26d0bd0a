#pragma once

/// The movement of the camera from one view to another.

#include "scene/Camera.hpp"

namespace sagitta::viewer {

/// The camera on its way from one look to another. A plain value; time is in seconds, of any clock.
struct Flight {
  Camera from, to;
  double began = 0;
  double lasts = 0.35;

  /// The camera at that time: starts and arrives gently, and turns the shorter way round.
  Camera at(double time) const;
  bool over(double time) const { return time >= began + lasts; }
};

/// A look at a place of the board from near by: from the side that the place faces, so that an edge is seen from
/// outside. `across` is the width of board to be seen, mm.
Camera near_look(const Camera& camera, Vec place, bool from_treble, float across);

}  // namespace sagitta::viewer
