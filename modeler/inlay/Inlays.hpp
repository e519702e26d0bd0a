#pragma once

/// Inlays: every piece and the pocket that it is let into, fitted to each other and to the cutters, in the board's
/// frame. Lengths in mm.

#include <string>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// A flat region: outer outlines counter-clockwise, holes clockwise, none crossing another.
using Loops = std::vector<Loop>;

/// One piece of inlay material and its pocket.
struct InlayPiece {
  std::string name;  ///< "shell-01": material and number, the same in every file and on screen
  std::string material;
  int inlay = 0;         ///< index into Board::inlays
  int fret = 0;          ///< the marker's
  double depth = 0;      ///< of the pocket, below the finished thickness
  double thickness = 0;  ///< of the piece as cut from its sheet
  Loops piece;
  Loops pocket;
};

}  // namespace sagitta
