#pragma once

/// Where a pocket's floor, the top of the piece in it, and the wood's top lie when the pieces are glued in. Heights
/// above the glue face, mm.

#include <string>
#include <utility>
#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// One inlay that goes to one depth with one thickness of piece.
struct InlayHeight {
  int inlay = 0;            ///< index into Board::inlays
  double floor = 0;         ///< of the pocket
  double piece_top = 0;     ///< floor + the piece's thickness
  double wood_top = 0;      ///< of the wood round it when the piece is glued in, on the centre line
  double finished_top = 0;  ///< of the board, on the centre line, before sanding
  double proud() const { return piece_top - wood_top; }          ///< < 0: it lies below
  double to_remove() const { return piece_top - finished_top; }  ///< what the radius takes off it in the middle
};

/// One for each inlay that has pieces, in the order of the board's inlays.
std::vector<InlayHeight> inlay_heights(const PreparedBoard& ready);

/// Inlays that go to the same heights together: "inlay 1", "inlays 1-3".
std::vector<std::pair<std::string, InlayHeight>> named_heights(const PreparedBoard& ready);

/// How far the highest piece stands over the wood when it is glued in; <= 0: none does.
double highest_proud(const PreparedBoard& ready);

}  // namespace sagitta
