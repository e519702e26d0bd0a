#include "findings/LetPiece.hpp"

#include <algorithm>
#include <cmath>

#include "inlay/Flatten.hpp"
#include "inlay/OutlineIndex.hpp"
#include "layout/SlotLines.hpp"

namespace sagitta {
namespace {

constexpr double dust = 0.001;  // mm; a part of a piece narrower than this is none

/// How far a shape reaches along a direction: its least and its greatest n.p.
struct Reach {
  double low = 1e300, high = -1e300;
};

Reach reach(const Region& region, Point n) {
  Reach found;
  for (const Polygon& polygon : region)
    for (const Point p : polygon) {
      found.low = std::min(found.low, dot(n, p));
      found.high = std::max(found.high, dot(n, p));
    }
  return found;
}

Region region_of(const Rounded& shape) { return flattened({outline(shape)}); }

/// The way from a to the outline of b where they are nearest.
OutlineIndex::Nearest nearest(const Region& a, const Region& b) {
  const OutlineIndex of_b(b), of_a(a);
  OutlineIndex::Nearest best;
  const auto look = [&](const Region& points, const OutlineIndex& index) {
    for (const Polygon& polygon : points)
      for (const Point p : polygon)
        if (const auto found = index.nearest(p); found.distance < best.distance) best = found;
  };
  look(a, of_b);
  look(b, of_a);
  return best;
}

}  // namespace

LetPiece::LetPiece(const Board& board, const InlayPiece& let)
    : piece_(&let),
      name_(let.name + " of inlay " + std::to_string(let.inlay + 1) + " at fret " + std::to_string(let.fret)),
      floor_(board.board.thickness - let.depth),
      body_(flattened(let.piece)),
      pocket_(flattened(let.pocket)),
      box_(bounds(pocket_)) {}

SlotMeeting LetPiece::against(const Layout& layout, const Slot& slot) const {
  constexpr double far = 10;  // mm; no limit of a wall is wider
  const Rounded shape = slot_shape(layout, slot);
  const Point across = -1.0 * left_of(unit(slot.treble_end - slot.bass_end));
  const double middle = dot(across, slot.bass_end), half = slot.width / 2;
  const Reach own = reach(pocket_, across);
  SlotMeeting meeting;
  meeting.wall = std::max(own.low - middle - half, middle - half - own.high);
  meeting.at = between(box_.low, box_.high, 0.5);
  if (meeting.wall > far) return meeting;
  const Region cut = region_of(shape);
  const Region taken = common(pocket_, cut);
  if (taken.empty()) {
    const auto way = nearest(pocket_, cut);
    meeting.wall = way.distance;
    meeting.at = way.p;
    return meeting;
  }
  const Box where = bounds(taken);
  meeting.at = between(where.low, where.high, 0.5);
  meeting.cuts_piece = !common(body_, cut).empty();
  meeting.sliver = 1e300;
  for (const Region& part : parts(without(body_, cut))) {
    const Reach left = reach(part, across);
    const double width = left.high - left.low;
    if (width < dust || width >= meeting.sliver) continue;
    meeting.sliver = width;
    const Box box = bounds(part);
    meeting.sliver_at = between(box.low, box.high, 0.5);
  }
  return meeting;
}

EdgeMeeting LetPiece::against_edges(const Layout& layout) const {
  EdgeMeeting meeting{1e300, {}};
  for (const Segment& edge : layout.edges) {
    const Point along = unit(edge.b - edge.a);
    // Outward: away from the centre line.
    const Point side = left_of(along), out = (edge.a.y + edge.b.y) * side.y > 0 ? side : -1.0 * side;
    for (const Polygon& polygon : pocket_)
      for (const Point p : polygon)
        if (const double wall = dot(out, edge.a - p); wall < meeting.wall) meeting = {wall, p};
  }
  return meeting;
}

double LetPiece::wall(const LetPiece& other) const {
  const Region both = common(pocket_, other.pocket_);
  if (both.empty()) return nearest(pocket_, other.pocket_).distance;
  double most = 0;
  for (const Region& part : parts(both)) {
    const Box box = bounds(part);
    most = std::max(most, std::min(box.high.x - box.low.x, box.high.y - box.low.y));
  }
  return -most;
}

}  // namespace sagitta
