#pragma once

/// What is drawn of the inlays: pockets as cut, and pieces where they will lie. mm, board's frame.

#include <vector>

#include "drawing/Drawing.hpp"
#include "inlay/Inlays.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

struct InlayOutlines {
  std::vector<Figure> pockets;     ///< as cut: what runs together is one pocket
  std::vector<InlayPiece> pieces;  ///< each once, named by material and number
};

/// Of the pieces and pockets that are selected.
InlayOutlines inlay_outlines(const PreparedBoard& ready);

/// A piece's outlines as figures that carry its name.
std::vector<Figure> figures_of(const InlayPiece& piece);

}  // namespace sagitta
