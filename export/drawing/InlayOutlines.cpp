#include "drawing/InlayOutlines.hpp"

namespace sagitta {

InlayOutlines inlay_outlines(const PreparedBoard& ready) {
  InlayOutlines outlines;
  outlines.pieces = ready.pieces();
  for (const InlayPiece& piece : ready.pieces())
    if (piece.shape)
      for (const Loop& loop : piece.pocket) outlines.pockets.push_back({"pocket of " + piece.name, loop, true});
  for (const Pocket& pocket : ready.pockets())
    for (const Loop& loop : pocket.shape ? Loops{} : pocket.outlines)
      outlines.pockets.push_back(
          {"pocket of inlay " + std::to_string(pocket.inlay + 1) + " at fret " + std::to_string(pocket.fret), loop,
           true});
  return outlines;
}

std::vector<Figure> figures_of(const InlayPiece& piece) {
  std::vector<Figure> figures;
  for (const Loop& loop : piece.piece) figures.push_back({piece.name, loop, true, piece.ellipse});
  return figures;
}

}  // namespace sagitta
