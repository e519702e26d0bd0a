#include "rules/LetPiece.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <tuple>

#include "inlay/ArcSplineFit.hpp"
#include "inlay/Flatten.hpp"
#include "layout/SlotLines.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr double dust = 0.001;  // mm; a part of a piece narrower than this is none

Reach reach(const Region& region, Point n) {
  Reach found;
  for (const Polygon& polygon : region)
    for (const Point p : polygon) {
      found.low = std::min(found.low, dot(n, p));
      found.high = std::max(found.high, dot(n, p));
    }
  return found;
}

Point middle_of(const Region& region) {
  const Box box = bounds(region);
  return between(box.low, box.high, 0.5);
}

Point right_of(const Slot& slot) { return -1.0 * left_of(unit(slot.treble_end - slot.bass_end)); }

/// The least width of a polygon's convex hull: it is found square to one of its sides.
double least_width(const Polygon& polygon) {
  double least = 1e300;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    if (a == b) continue;
    const Reach own = reach({polygon}, left_of(unit(b - a)));
    least = std::min(least, own.high - own.low);
  }
  return least;
}

bool is_convex(const Region& region) {
  if (region.size() != 1) return false;
  const Polygon& polygon = region.front();
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point before = polygon[(i + polygon.size() - 1) % polygon.size()];
    const Point after = polygon[(i + 1) % polygon.size()];
    if (cross(polygon[i] - before, after - polygon[i]) < -tolerance::same) return false;
  }
  return true;
}

/// How far one outline must be moved along n until it has left the other, which lies behind it.
double way_out(const Loops& stays, const Loops& leaves, double angle) {
  const Point n{std::cos(angle), std::sin(angle)};
  return reach(stays, n).high - reach(leaves, n).low;
}

/// The shortest way that parts two convex outlines (their penetration depth): square to a side of one of them, or
/// beside that where the sides are arcs.
/// `one_stands`, `other_stands`: their polygons.
double parting(const Loops& one, const Region& one_stands, const Loops& other, const Region& other_stands) {
  double least = 1e300, at = 0;
  for (const Region* region : {&one_stands, &other_stands})
    for (std::size_t i = 0; i < region->front().size(); ++i) {
      const Polygon& polygon = region->front();
      const Point side = polygon[(i + 1) % polygon.size()] - polygon[i];
      if (side == Point{0, 0}) continue;
      const double square = std::atan2(-side.x, side.y) + (region == &one_stands ? 0 : std::numbers::pi);
      if (const double way = way_out(one, other, square); way < least) least = way, at = square;
    }
  constexpr double golden = 0.6180339887498949, beside = 0.05;  // radians: more than a chord of an arc turns by
  double low = at - beside, high = at + beside;
  for (int i = 0; i < 60; ++i) {
    const double a = high - golden * (high - low), b = low + golden * (high - low);
    if (way_out(one, other, a) < way_out(one, other, b)) {
      high = b;
    } else {
      low = a;
    }
  }
  return std::min(least, way_out(one, other, (low + high) / 2));
}

}  // namespace

LetPiece::LetPiece(const Board& board, const InlayPiece& let, LetName name)
    : piece_(&let),
      name_(std::move(name)),
      floor_(board.board.thickness - let.depth),
      body_(flattened(let.piece, tolerance::fine_chords)),
      pocket_(flattened(let.pocket, tolerance::fine_chords)),
      box_(bounds(let.pocket)) {}

bool LetPiece::has_pocket_at(Point p) const { return box_.overlaps({p, p}) && holds(piece_->pocket, p); }

Region LetPiece::taken(const Loop& cut) const {
  if (!box_.overlaps(bounds(cut))) return {};
  return intersection(pocket_, flattened({cut}, tolerance::fine_chords));
}

/// Chords miss the point of an outline that reaches farthest: a part that reaches as far as the whole does so exactly.
double LetPiece::sliver_width(const Reach& part, const Reach& whole) const {
  const auto exact = [](double chord, double outline) {
    return std::abs(chord - outline) <= 2 * tolerance::fine_chords ? outline : chord;
  };
  return exact(part.high, whole.high) - exact(part.low, whole.low);
}

SlotMeeting LetPiece::against(const Layout& layout, const Slot& slot) const {
  constexpr double far = 10;  // mm; no limit of a wall is wider
  const Loop shape = outline(slot_shape(layout, slot));
  const Point across = right_of(slot);
  const double middle = dot(across, slot.bass_end), half = slot.width / 2;
  const Reach own = reach(piece_->pocket, across);
  SlotMeeting meeting;
  meeting.wall = std::max(own.low - middle - half, middle - half - own.high);
  meeting.at = this->middle();
  if (meeting.wall > far) return meeting;
  const Region over = taken(shape);
  if (over.empty()) {
    if (const Gap way = gap(piece_->pocket, {shape}); way.width > 0) meeting.wall = way.width, meeting.at = way.b;
    return meeting;
  }
  meeting.at = middle_of(over);
  const Region cut = flattened({shape}, tolerance::fine_chords);
  meeting.cuts_piece = !intersection(body_, cut).empty();
  meeting.sliver = 1e300;
  const Reach body = reach(piece_->piece, across);
  for (const Region& part : parts(difference(body_, cut))) {
    const double width = sliver_width(reach(part, across), body);
    if (width < dust || width >= meeting.sliver) continue;
    meeting.sliver = width;
    meeting.sliver_at = middle_of(part);
  }
  return meeting;
}

WoodWall LetPiece::against_edges(const Layout& layout) const {
  WoodWall wall;
  for (const LineSegment& edge : layout.edges) {
    const Point along = unit(edge.b - edge.a);
    // Outward: away from the centre line.
    const Point side = left_of(along), out = (edge.a.y + edge.b.y) * side.y > 0 ? side : -1.0 * side;
    const Reach own = reach(piece_->pocket, out);
    if (const double width = dot(out, edge.a) - own.high; width < wall.width) wall = {width, own.high_at};
  }
  if (!layout.frets[static_cast<std::size_t>(piece_->fret)].on_tongue) return wall;
  // A piece on the tongue has its bass side for an edge, and its end.
  const LineSegment& side = layout.tongue->bass_side;
  const Point along = unit(side.b - side.a), left = left_of(along);
  const Point out = layout.frets.front().treble_edge.y > 0 ? -1.0 * left : left;
  for (const auto& [way, at] : {std::pair{out, side.a}, {Point{1, 0}, Point{layout.tongue->end, 0}}}) {
    const Reach own = reach(piece_->pocket, way);
    if (const double width = dot(way, at) - own.high; width < wall.width) wall = {width, own.high_at};
  }
  return wall;
}

WoodWall LetPiece::wall(const LetPiece& other, double most) const {
  if (!box_.overlaps(other.box_, most)) return {};
  const Region both = box_.overlaps(other.box_) ? intersection(pocket_, other.pocket_) : Region{};
  if (both.empty()) {
    const Gap way = gap(piece_->pocket, other.piece_->pocket, most);
    return {way.width, way.middle()};
  }
  if (is_convex(pocket_) && is_convex(other.pocket_))
    return {-parting(piece_->pocket, pocket_, other.piece_->pocket, other.pocket_), middle_of(both)};
  WoodWall wall{0, middle_of(both)};
  for (const Region& part : parts(both))
    if (const double width = least_width(part.front()); width > -wall.width) wall = {-width, middle_of(part)};
  return wall;
}

std::vector<LetPiece> let_pieces(const Board& board, const Inlays& inlays) {
  using Key = std::tuple<int, int, int>;
  const auto key = [](const InlayPiece& piece) { return Key{piece.inlay, piece.fret, piece.pair}; };
  std::map<Key, int> count, marker;
  for (const InlayPiece& piece : inlays.pieces) {
    ++count[key(piece)];
    marker.try_emplace(key(piece), static_cast<int>(marker.size()));
  }
  std::vector<LetPiece> let;
  for (const InlayPiece& piece : inlays.pieces) {
    const std::string whole = "inlay " + std::to_string(piece.inlay + 1) + " at fret " + std::to_string(piece.fret);
    const bool alone = count[key(piece)] == 1;
    const FeatureId id = alone ? FeatureId{FeatureId::Kind::inlay, piece.inlay, piece.fret, piece.pair} : id_of(piece);
    let.emplace_back(board, piece, LetName{id, alone ? whole : piece.name + " of " + whole, marker[key(piece)]});
  }
  return let;
}

}  // namespace sagitta
