#include "inlaid/ChipCover.hpp"

#include <algorithm>

#include "polygon/Gap.hpp"
#include "polygon/Region.hpp"

namespace sagitta {
namespace {

/// How far a point lies within outlines; negative: beside them.
double depth_in(const Loops& outlines, Point p) {
  const double way = gap({{line(p, p)}}, outlines).width;
  return holds(outlines, p) ? way : -way;
}

/// How far a point lies beyond a line that runs along the edge, `inward` from it.
double depth_beyond(const LineSegment& edge, double inward, Point p) {
  const Point along = unit(edge.b - edge.a);
  const double side = dot(p - edge.a, left_of(along));
  const bool inward_is_left = (edge.a.y + edge.b.y < 0) == (along.x > 0);
  const double own = inward_is_left ? side : -side;
  return inward - own;
}

}  // namespace

std::vector<Chip> chips_of(const Board& board) {
  std::vector<Chip> chips;
  for (const auto& [x, y, diameter] : board.measured.chips)
    chips.push_back({{x, board.hand == Hand::left ? -y : y}, diameter / 2});
  return chips;
}

double chip_left(const PreparedBoard& ready, const Chip& chip) {
  const Layout& layout = ready.layout();
  double depth = -depth_in({layout.outline}, chip.middle);
  for (const InlayPiece& piece : ready.inlays().pieces) depth = std::max(depth, depth_in(piece.piece, chip.middle));
  if (ready.board().binding)
    for (const LineSegment& edge : layout.edges)
      depth = std::max(depth, depth_beyond(edge, ledge_width(*ready.board().binding), chip.middle));
  return chip.radius - depth;
}

}  // namespace sagitta
