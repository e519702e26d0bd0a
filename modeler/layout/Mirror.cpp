#include "layout/Mirror.hpp"

#include <algorithm>
#include <utility>

namespace sagitta {
namespace {

Point mirror(Point p) { return {p.x, 0 - p.y}; }
LineSegment mirror(LineSegment s) { return {mirror(s.a), mirror(s.b)}; }
/// A direction of a line that points toward +y stays one.
Point mirror_direction(Point d) { return {0 - d.x, d.y}; }

}  // namespace

Layout mirrored(Layout layout) {
  for (FretLine& fret : layout.frets)
    for (Point* p : {&fret.bass, &fret.treble, &fret.middle, &fret.bass_edge, &fret.treble_edge}) *p = mirror(*p);
  std::swap(layout.edge_at_nut[0], layout.edge_at_nut[1]);
  std::swap(layout.edge_slope[0], layout.edge_slope[1]);
  if (layout.tongue) layout.tongue->bass_side = mirror(layout.tongue->bass_side);
  for (LineSegment& string : layout.strings) string = mirror(string);
  layout.nut_direction = mirror_direction(layout.nut_direction);
  if (!layout.outline.empty()) {
    layout.outline = mirrored(layout.outline);
    std::rotate(layout.outline.begin(), layout.outline.begin() + 1, layout.outline.end());
  }
  layout.edges[0] = mirror(std::exchange(layout.edges[1], mirror(layout.edges[0])));
  for (Slot& slot : layout.slots) {
    slot.bass_end = mirror(slot.bass_end);
    slot.treble_end = mirror(slot.treble_end);
  }
  if (layout.nut) {
    layout.nut->direction = mirror_direction(layout.nut->direction);
    layout.nut->face = mirror(layout.nut->face);
    layout.nut->back = mirror(layout.nut->back);
  }
  for (Marker& marker : layout.markers) marker.centre = mirror(marker.centre);
  for (SideDot& dot : layout.side_dots) {
    dot.mouth = mirror(dot.mouth);
    dot.inward = mirror(dot.inward);
  }
  for (Pin& pin : layout.pins) pin.centre = mirror(pin.centre);
  return layout;
}

}  // namespace sagitta
