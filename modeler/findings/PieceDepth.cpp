#include "findings/PieceDepth.hpp"

#include <algorithm>
#include <cmath>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Chords of this length on a surface of 150 mm radius miss it by 0.0008 mm.
constexpr double station = 1;

bool on_board(const Layout& layout, const Surface& surface, Point p) {
  return p.x >= layout.nut_end && p.x <= layout.heel_end &&
         std::abs(p.y) <= layout.half_width(p.x) + tolerance::vertex && surface.exists(p.x, p.y);
}

/// Points along a piece of outline, the one where it crosses the board's middle among them.
std::vector<Point> points_of(const Piece& piece) {
  const int count = std::max(4, static_cast<int>(std::ceil(piece.length() / station)));
  std::vector<Point> points;
  for (int i = 0; i <= count; ++i) {
    const Point p = piece.at(1.0 * i / count);
    if (!points.empty() && points.back().y * p.y < 0)
      points.push_back(between(points.back(), p, points.back().y / (points.back().y - p.y)));
    points.push_back(p);
  }
  return points;
}

}  // namespace

std::optional<PieceDepth> piece_depth(const Board& board, const Layout& layout, const Surface& surface,
                                      const InlayPiece& piece) {
  const double floor = board.board.thickness - piece.depth;
  PieceDepth depth{1e300, {}, -1e300, {}, 0, floor + piece.thickness - layout.blank_thickness};
  for (const Loop& loop : piece.piece)
    for (const Piece& side : loop)
      for (const Point p : points_of(side)) {
        if (!on_board(layout, surface, p)) continue;
        const double left = surface.height(p) - floor;
        if (left < depth.least) depth.least = left, depth.least_at = p;
        if (left > depth.most) depth.most = left, depth.most_at = p;
      }
  if (depth.most < depth.least) return std::nullopt;
  depth.least = std::min(depth.least, piece.thickness);
  depth.spare = piece.thickness - depth.most;
  return depth;
}

}  // namespace sagitta
