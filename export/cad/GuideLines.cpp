#include "cad/GuideLines.hpp"

#include "layout/SlotLines.hpp"
#include "plan/Feature.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

GuideLine in_bound(std::string name, std::string layer, const Loop& loop, const BoundingSurface& bound) {
  GuideLine guide{std::move(name), std::move(layer), {}};
  for (const CurveSegment& segment : loop) guide.pieces.push_back({segment, bound});
  return guide;
}

/// The middle line between the two sides of the wood that it runs through at this stage.
LineSegment middle_line(const PreparedBoard& ready, const Slot& slot, bool outlined) {
  if (slot.blind) {
    const std::vector<Point> core = slot_shape(ready.layout(), slot).core;
    return {core.front(), core.back()};
  }
  if (outlined) return {slot.bass_end, slot.treble_end};
  const Point along = slot.treble_end - slot.bass_end;
  const auto at = [&](double y) { return slot.bass_end + ((y - slot.bass_end.y) / along.y) * along; };
  const Box& strip = ready.layout().strip;
  const double bass_side = along.y > 0 ? strip.low.y : strip.high.y,
               treble_side = along.y > 0 ? strip.high.y : strip.low.y;
  return {slot.bass_open || slot.on_tongue ? slot.bass_end : at(bass_side),
          slot.treble_open ? slot.treble_end : at(treble_side)};
}

GuideLine slot_line(const PreparedBoard& ready, const Slot& slot, bool outlined) {
  const double depth = slot_depth(ready.board());
  const bool level = ready.board().slots.floor == SlotFloor::level;
  const LineSegment middle = middle_line(ready, slot, outlined);
  const std::optional<double> fall = ready.layout().fall_start;
  const auto bound = [&](Point a, Point b) {
    if (level) return BoundingSurface{BoundingSurface::Kind::level, ready.surface().thickness - depth, false};
    return BoundingSurface{BoundingSurface::Kind::offset_surface, depth, fall && (a.x + b.x) / 2 > *fall};
  };
  std::vector<Point> stations{middle.a, middle.b};
  if (fall && !level && (middle.a.x - *fall) * (middle.b.x - *fall) < 0) {
    const Point crossing = between(middle.a, middle.b, (*fall - middle.a.x) / (middle.b.x - middle.a.x));
    if (distance(crossing, middle.a) > tolerance::vertex && distance(crossing, middle.b) > tolerance::vertex)
      stations.insert(stations.begin() + 1, crossing);
  }
  GuideLine guide{"fret " + std::to_string(slot.fret) + " slot", "slot middle lines", {}};
  for (std::size_t i = 0; i + 1 < stations.size(); ++i)
    guide.pieces.push_back({line(stations[i], stations[i + 1]), bound(stations[i], stations[i + 1])});
  return guide;
}

}  // namespace

std::vector<GuideLine> guide_lines(const PreparedBoard& ready, Stage stage) {
  const WorkDone done = work_done_at(ready.board(), stage);
  std::vector<GuideLine> guides;
  if (done.slots)
    for (const Slot& slot : ready.slots()) guides.push_back(slot_line(ready, slot, done.outline));
  if (done.pockets || done.outline)
    for (const Feature& feature : ready.features(done)) {
      if (feature.kind == Source::Kind::cut)
        guides.push_back(in_bound(feature.name, "cuts", feature.shape ? outline(*feature.shape) : feature.loop,
                                  feature.role == Feature::Role::removal
                                      ? BoundingSurface{BoundingSurface::Kind::level, 0, false}
                                      : feature.bound));
      if (feature.kind == Source::Kind::pocket)
        guides.push_back(in_bound(feature.name + " pocket", "pockets",
                                  feature.shape ? outline(*feature.shape) : feature.loop, feature.bound));
    }
  guides.push_back(
      in_bound("board outline", "outline", ready.layout().outline, {BoundingSurface::Kind::level, 0, false}));
  return guides;
}

}  // namespace sagitta
