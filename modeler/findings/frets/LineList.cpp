#include "frets/LineList.hpp"

#include <algorithm>
#include <cmath>

#include "board/SlotCut.hpp"
#include "layout/SlotLines.hpp"

namespace sagitta {
namespace {

/// What the binding takes off a through slot's end, along the slot.
double bound(const Board& board, const LineSegment& edge, Point way) {
  return board.binding ? board.binding->width / std::abs(cross(unit(edge.b - edge.a), way)) : 0;
}

double height_of(const Board& board, const Surface& surface, Point a, Point b) {
  double high = std::max(surface.height(a), surface.height(b)), low = std::min(surface.height(a), surface.height(b));
  if (a.y * b.y < 0) high = std::max(high, surface.height(between(a, b, a.y / (a.y - b.y))));
  const double depth = slot_depth(board);
  return high - (board.slots.floor == SlotFloor::level ? board.board.thickness - depth : low - depth);
}

}  // namespace

std::vector<LinePiece> line_list(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  std::vector<LinePiece> list;
  if (slot_cut(board) != SlotCut::lines) return list;
  for (const Slot& slot : ready.slots()) {
    Point a = slot.bass_end, b = slot.treble_end;
    if (!slot.blind) {
      const Point way = unit(b - a);
      const bool bass_low = a.y < b.y;
      a = a + bound(board, layout.edges[bass_low ? 0 : 1], way) * way;
      b = b - bound(board, layout.edges[bass_low ? 1 : 0], way) * way;
    }
    list.push_back({slot.fret, board.slots.line_material, distance(a, b), line_thickness(board),
                    height_of(board, ready.surface(), a, b)});
  }
  return list;
}

double total_line(const std::vector<LinePiece>& list) {
  double total = 0;
  for (const LinePiece& piece : list) total += piece.length;
  return total;
}

}  // namespace sagitta
