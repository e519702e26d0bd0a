#include "jobsheet/InlayHeights.hpp"

#include <algorithm>
#include <set>

#include "layout/Layout.hpp"

namespace sagitta {

double wood_top_before(const PreparedBoard& ready, Operation operation) {
  const Board& board = ready.board();
  double top = ready.layout().blank_thickness;
  for (const Operation each : board.order) {
    if (each == operation) break;
    if (each == Operation::thickness) top = thickness_to(board);
    if (each == Operation::radius) top = board.board.thickness + board.sanding;
  }
  return top;
}

std::vector<InlayHeight> inlay_heights(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const double top = wood_top_before(ready, Operation::inlay);
  std::vector<InlayHeight> heights;
  std::set<int> seen;
  for (const InlayPiece& piece : ready.pieces()) {
    if (!seen.insert(piece.inlay).second) continue;
    const double floor = board.board.thickness - piece.depth;
    heights.push_back({piece.inlay, floor, floor + piece.thickness, top, board.board.thickness + board.sanding});
  }
  std::ranges::sort(heights, {}, &InlayHeight::inlay);
  return heights;
}

double highest_proud(const PreparedBoard& ready) {
  double most = 0;
  for (const InlayHeight& each : inlay_heights(ready)) most = std::max(most, each.proud());
  return most;
}

}  // namespace sagitta
