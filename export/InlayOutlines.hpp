#pragma once

/// What is drawn of the inlays: pockets as cut, and pieces where they will lie. mm, board's frame.

#include <vector>

#include "board/Board.hpp"
#include "export/Drawing.hpp"
#include "inlay/Inlays.hpp"
#include "layout/Layout.hpp"

namespace sagitta {

struct InlayOutlines {
  std::vector<Figure> pockets;     ///< each once, though two inlays may share it
  std::vector<InlayPiece> pieces;  ///< each once, named by material and number
};

InlayOutlines inlay_outlines(const Board& board, const Layout& layout);

/// A piece's outlines as figures that carry its name.
std::vector<Figure> figures_of(const InlayPiece& piece);

}  // namespace sagitta
