#include "drawing/WoodTop.hpp"

#include <algorithm>

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

double wood_top_before(const PreparedBoard& ready, const ResolvedSetup& setup) {
  for (const Operation each : ready.board().order)
    if (std::ranges::find(setup.operations, each) != setup.operations.end()) return wood_top_before(ready, each);
  return ready.layout().blank_thickness;
}

}  // namespace sagitta
