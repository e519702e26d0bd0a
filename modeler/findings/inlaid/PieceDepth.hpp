#pragma once

/// How thick a piece of inlay stays: its pocket's floor is level, cut in the flat blank, and the playing surface falls
/// toward the edges. Lengths in mm.

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

struct PieceDepth {
  double least = 0;       ///< what stays of the piece after radius and sanding where it is thinnest; < 0: cut through
  Point least_at;         ///< where that is
  double most = 0;        ///< the greatest height from the pocket's floor to the playing surface
  Point most_at;          ///< where that is
  double spare = 0;       ///< the piece's thickness less `most`; < 0: it lies below the surface
  double over_blank = 0;  ///< how far the piece stands over the raw top (see raw_top()); < 0: below
};

/// Over all of the piece that lies within the board's edges; nothing when none does. Along its outline the surface is
/// followed at points so close that it bends by less than 0.001 mm between them.
std::optional<PieceDepth> piece_depth(const PreparedBoard& ready, const InlayPiece& piece);

}  // namespace sagitta
