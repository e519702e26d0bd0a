#pragma once

/// The rectangle around one piece of an inlay: it is turned with the piece and lies level, at the height that the
/// playing surface has in its middle. Lengths in mm, in the board's frame.

#include <optional>

#include "plane/Plane.hpp"
#include "scene/Camera.hpp"

namespace sagitta::viewer {

struct Desk;

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

/// Chooses an inlay: its piece nearest to that place, else the one chosen last, else its first.
void choose_inlay(Desk& desk, int inlay, std::optional<Point> near = std::nullopt);
/// Chooses what a hand has just taken up in the column of decisions.
void choose_from_rows(Desk& desk);

/// Whether a piece is chosen and its decisions are open: it is in the hand then.
bool has_chosen(const Desk& desk);

/// The chosen piece's frame as the document has it, a step ahead of the picture. Nothing while none is chosen, while
/// the board cannot be built, and where hands have nothing to do with it: from the side and from below, before its
/// pocket is cut, while measuring.
std::optional<InlayFrame> chosen_frame(const Desk& desk);

}  // namespace sagitta::viewer
