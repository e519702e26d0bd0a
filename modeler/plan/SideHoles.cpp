#include "plan/SideHoles.hpp"

#include <algorithm>
#include <optional>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// How far a hole's rectangle reaches out of the edge. mm.
constexpr double overreach = 1;

BoundingSurface trough_of(const RoundedPolygon& rectangle, Point inward, double z) {
  Tunnel tunnel{-inward.y, inward.x, 0, 0};
  double low = 1e300, high = -1e300;
  for (const Point p : rectangle.core) {
    low = std::min(low, tunnel.across(p));
    high = std::max(high, tunnel.across(p));
  }
  tunnel.offset = (low + high) / 2;
  tunnel.radius = (high - low) / 2;
  return {BoundingSurface::Kind::trough, z, false, tunnel};
}

/// None where the binding is thicker than the hole is deep.
std::optional<Feature> hole_of(const Board& board, const SideDot& dot, const Surface& surface) {
  const double behind = board.binding && board.binding->height == 0 ? ledge_width(*board.binding) : 0;
  if (dot.depth - behind <= tolerance::vertex) return std::nullopt;
  Feature f = feature_called(id_of(dot));
  f.role = Feature::Role::hole;
  f.kind = Source::Kind::side_dot;
  f.key = "side_dots.frets";
  const Point aside = dot.radius * left_of(dot.inward);
  const Point mouth = dot.mouth - overreach * dot.inward, end = dot.mouth + dot.depth * dot.inward;
  f.shape = RoundedPolygon{{mouth - aside, end - aside, end + aside, mouth + aside}, 0};
  f.bound = trough_of(*f.shape, dot.inward, surface.height(dot.mouth) / 2);
  return f;
}

std::optional<double> level_of(const Feature& f, const Surface& surface) {
  const bool cuts = f.role == Feature::Role::cut || f.role == Feature::Role::pin;
  if (cuts && f.bound.kind == BoundingSurface::Kind::level) return f.bound.value;
  if (cuts && f.bound.kind == BoundingSurface::Kind::offset_surface && surface.flat)
    return surface.thickness - f.bound.value;
  return std::nullopt;
}

bool over_each_other(const Feature& a, const Feature& b) {
  const auto extent = [](const Feature& f) { return bounds(f.shape ? outline(*f.shape) : f.loop); };
  return extent(a).overlaps(extent(b));
}

/// How much smaller the hole must be so that `snap` of wood stays between it and a level that it only touches.
double too_large_by(const Feature& hole, double level, double snap) {
  const double above = level - (hole.bound.value + hole.bound.tunnel.radius);
  const double below = hole.bound.value - hole.bound.tunnel.radius - level;
  for (const double gap : {above, below})
    if (std::abs(gap) < snap - tolerance::same) return snap - gap;
  return 0;
}

}  // namespace

std::vector<Feature> side_hole_features(const Board& board, const Layout& layout, const Surface& surface) {
  std::vector<Feature> features;
  if (board.side_dots && board.side_dots->in == DotIn::binding) return features;
  for (const SideDot& dot : layout.side_dots)
    if (std::optional<Feature> hole = hole_of(board, dot, surface)) features.push_back(std::move(*hole));
  return features;
}

void settle_side_holes(std::vector<Feature>& features, const Surface& surface, double snap, Faults& notes) {
  for (Feature& hole : features) {
    if (hole.role != Feature::Role::hole || hole.shape->empty()) continue;
    const Point inward{hole.bound.tunnel.ny, -hole.bound.tunnel.nx};
    hole.bound = trough_of(*hole.shape, inward, hole.bound.value);
    for (const Feature& other : features) {
      const std::optional<double> level = level_of(other, surface);
      if (!level || (other.shape && other.shape->empty())) continue;
      const double by = too_large_by(hole, *level, snap);
      if (by <= 0 || !over_each_other(hole, other)) continue;
      hole.shape = shrunk(*hole.shape, by);
      hole.bound = trough_of(*hole.shape, inward, hole.bound.value);
      notes.push_back({FaultCode::touches, hole.key,
                       hole.name + " only touches " + other.name + "; drawn back so that a skin of wood stays",
                       "use a slightly smaller side dot, or another depth", hole.id});
    }
  }
}

}  // namespace sagitta
