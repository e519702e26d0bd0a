#include "jobsheet/InlayHeights.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "drawing/JobPart.hpp"
#include "drawing/WoodTop.hpp"
#include "layout/Layout.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {

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

std::vector<std::pair<std::string, InlayHeight>> named_heights(const PreparedBoard& ready) {
  std::vector<std::pair<std::set<int>, InlayHeight>> groups;
  for (const InlayHeight& each : inlay_heights(ready)) {
    const auto same = std::ranges::find_if(groups, [&](const auto& group) {
      return std::abs(group.second.floor - each.floor) < tolerance::same &&
             std::abs(group.second.piece_top - each.piece_top) < tolerance::same;
    });
    if (same == groups.end())
      groups.push_back({{each.inlay + 1}, each});
    else
      same->first.insert(each.inlay + 1);
  }
  std::vector<std::pair<std::string, InlayHeight>> named;
  for (const auto& [inlays, height] : groups)
    named.emplace_back((inlays.size() > 1 ? "inlays " : "inlay ") + words_of(inlays), height);
  return named;
}

double highest_proud(const PreparedBoard& ready) {
  double most = 0;
  for (const InlayHeight& each : inlay_heights(ready)) most = std::max(most, each.proud());
  return most;
}

}  // namespace sagitta
