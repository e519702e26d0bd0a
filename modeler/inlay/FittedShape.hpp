#pragma once

/// A shape that no drawing gives, as the cutters named leave it. Lengths in mm.

#include <optional>

#include "board/Board.hpp"
#include "inlay/Placement.hpp"
#include "plane/Ellipse.hpp"
#include "plane/RoundedPolygon.hpp"

namespace sagitta {

/// The piece is the shape opened by the cutter, its pocket is that moved out by the clearance.
struct FittedShape {
  Loops piece, pocket;                                      ///< none where the cutters do not go in
  std::optional<RoundedPolygon> rounded, rounded_pocket{};  ///< the same where they are convex with round corners
  std::optional<Ellipse> ellipse{};                         ///< the piece's outline, where it is one
  double departure = 0;  ///< how far the cutters stay away from the sharpest place of what is drawn
  Point departure_at;    ///< where that is
};

/// `inlay` must not be artwork.
FittedShape fit_shape(const Board& board, const Inlay& inlay, const Placement& place);
/// The same for a cutter of radius `cutter` (mm, >= 0).
FittedShape fit_shape(const Inlay& inlay, double cutter, const Placement& place);

/// The outline as it is drawn, its middle at the origin. `inlay` must not be artwork.
Loops shape_outline(const Inlay& inlay);

}  // namespace sagitta
