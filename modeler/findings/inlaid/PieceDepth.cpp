#include "inlaid/PieceDepth.hpp"

#include <algorithm>
#include <cmath>

#include "plane/Tolerance.hpp"
#include "polygon/Gap.hpp"

namespace sagitta {
namespace {

/// Chords of this length on a surface of 150 mm radius miss it by 0.0008 mm.
constexpr double station = 1;
constexpr int least_stations = 16;  // an even number: the middle of a piece of outline is one

/// On the tongue, beyond the heel end.
bool on_tongue(const Layout& layout, Point p) {
  const LineSegment& side = layout.tongue->bass_side;
  const double treble = layout.frets.front().treble_edge.y > 0 ? 1 : -1;
  const double y = side.a.y + (p.x - side.a.x) / (side.b.x - side.a.x) * (side.b.y - side.a.y);
  return p.x <= layout.tongue->end && treble * (p.y - y) >= -tolerance::vertex;
}

bool on_board(const Layout& layout, const Surface& surface, Point p) {
  if (layout.tongue && p.x > layout.heel_end && !on_tongue(layout, p)) return false;
  return p.x >= layout.nut_end && (layout.tongue || p.x <= layout.heel_end) &&
         std::abs(p.y) <= layout.edge(p.y < 0 ? 0 : 1, p.x) + tolerance::vertex && surface.exists(p.x, p.y);
}

/// Where a piece of outline crosses the board's edge between t0 and t1, of which one is on the board: on the board.
Point at_edge(const Layout& layout, const Surface& surface, const CurveSegment& segment, double t0, double t1) {
  if (!on_board(layout, surface, segment.at(t0))) std::swap(t0, t1);
  while (distance(segment.at(t0), segment.at(t1)) > tolerance::vertex) {
    const double t = (t0 + t1) / 2;
    (on_board(layout, surface, segment.at(t)) ? t0 : t1) = t;
  }
  return segment.at(t0);
}

/// Points along a piece of outline, those where it crosses the board's middle and its edge among them.
std::vector<Point> points_of(const Layout& layout, const Surface& surface, const CurveSegment& segment) {
  const int count = std::max(least_stations, 2 * static_cast<int>(std::ceil(segment.length() / station / 2)));
  std::vector<Point> points;
  for (int i = 0; i <= count; ++i) {
    const Point p = segment.at(1.0 * i / count);
    if (!points.empty() && points.back().y * p.y < 0)
      points.push_back(between(points.back(), p, points.back().y / (points.back().y - p.y)));
    if (i > 0 && on_board(layout, surface, p) != on_board(layout, surface, segment.at((i - 1.0) / count)))
      points.push_back(at_edge(layout, surface, segment, (i - 1.0) / count, 1.0 * i / count));
    points.push_back(p);
  }
  return points;
}

/// Places of a piece in the troughs of scalloped spaces: between two points of its outline a scallop is lower.
std::vector<Point> points_in_troughs(const Surface& surface, const Loops& piece) {
  std::vector<Point> points;
  const Box box = bounds(piece.front());
  for (const ScallopedSpace& space : surface.scallops)
    for (double y = box.low.y; y <= box.high.y; y += station / 4)
      if (const Point p{space.x(0.5, y), y}; holds(piece, p)) points.push_back(p);
  return points;
}

}  // namespace

std::optional<PieceDepth> piece_depth(const PreparedBoard& ready, const InlayPiece& piece) {
  const Layout& layout = ready.layout();
  const Surface& surface = ready.surface();
  const double floor = ready.board().board.thickness - piece.depth;
  PieceDepth depth{1e300, {}, -1e300, {}, 0, floor + piece.thickness - raw_top(ready.board(), layout)};
  std::vector<Point> points = points_in_troughs(surface, piece.piece);
  for (const Loop& loop : piece.piece)
    for (const CurveSegment& side : loop) {
      const std::vector<Point> own = points_of(layout, surface, side);
      points.insert(points.end(), own.begin(), own.end());
    }
  for (const Point p : points) {
    if (!on_board(layout, surface, p)) continue;
    const double left = surface.lowest(p) - floor;
    if (left < depth.least) depth.least = left, depth.least_at = p;
    if (left > depth.most) depth.most = left, depth.most_at = p;
  }
  if (depth.most < depth.least) return std::nullopt;
  depth.least = std::min(depth.least, piece.thickness);
  depth.spare = piece.thickness - depth.most;
  return depth;
}

}  // namespace sagitta
