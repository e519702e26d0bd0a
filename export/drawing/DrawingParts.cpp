#include "drawing/DrawingParts.hpp"

#include <algorithm>

#include "board/CutSide.hpp"
#include "layout/OutlineReach.hpp"
#include "layout/SlotLines.hpp"
#include "plane/RoundedPolygon.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

Figure closed(std::string name, Loop segments) { return {std::move(name), std::move(segments), true}; }
Figure open(std::string name, Point a, Point b) { return {std::move(name), {line(a, b)}, false}; }

/// Where the line through p in direction d (toward +y) meets the edge at negative (side 0) or positive y (side 1).
Point on_edge(const Layout& layout, int side, Point p, Point d) {
  const double sign = side == 0 ? -1 : 1, slope = layout.edge_slope[static_cast<std::size_t>(side)];
  const double t = (sign * layout.edge(side, p.x) - p.y) / (d.y - sign * slope * d.x);
  return p + t * d;
}

Loop strip_loop(Point a, Point b, double width) {
  const Point aside = width / 2 * left_of(unit(b - a));
  return {line(a - aside, b - aside), line(b - aside, b + aside), line(b + aside, a + aside),
          line(a + aside, a - aside)};
}

/// A through slot's middle line, longer by the overrun at both ends.
LineSegment overrun_slot(const Slot& slot) {
  const Point along = unit(slot.treble_end - slot.bass_end);
  return {slot.bass_end - drawing_overrun * along, slot.treble_end + drawing_overrun * along};
}

/// A blind slot's middle line between the centres of its round ends; longer by the overrun where the heel end cuts it.
LineSegment between_tips(const Slot& slot) {
  const Point along = unit(slot.treble_end - slot.bass_end);
  const double bass = slot.bass_open ? -drawing_overrun : slot.width / 2;
  const double treble = slot.treble_open ? -drawing_overrun : slot.width / 2;
  return {slot.bass_end + bass * along, slot.treble_end - treble * along};
}

}  // namespace

Figure radius_area_figure(const Layout& layout) {
  return closed("radius area", rectangle(layout.strip.low, layout.strip.high));
}

std::vector<Figure> slot_middle_figures(const std::vector<Slot>& slots) {
  std::vector<Figure> figures;
  for (const Slot& slot : slots) {
    const LineSegment middle = slot.blind ? between_tips(slot) : overrun_slot(slot);
    figures.push_back(open(slot_name(slot), middle.a, middle.b));
  }
  return figures;
}

std::vector<Figure> slot_outline_figures(const std::vector<Slot>& slots) {
  std::vector<Figure> figures;
  for (const Slot& slot : slots) {
    const LineSegment middle = slot.blind ? between_tips(slot) : overrun_slot(slot);
    Loop loop = slot.blind ? outline(RoundedPolygon{{middle.a, middle.b}, slot.width / 2})
                           : strip_loop(middle.a, middle.b, slot.width);
    figures.push_back(closed(slot_name(slot), std::move(loop)));
  }
  return figures;
}

std::vector<Figure> fret_place_figures(const Layout& layout) {
  std::vector<Figure> figures;
  for (const FretLine& fret : layout.frets)
    if (fret.fret > 0)
      figures.push_back(open("place of fret " + std::to_string(fret.fret), fret.bass_edge, fret.treble_edge));
  return figures;
}

std::vector<Figure> nut_seat_figures(const Layout& layout) {
  if (!layout.nut) return {};
  const NutGround& seat = *layout.nut;
  const Point d = seat.direction;
  // A shelf is open to the nut end: its far side lies past it by the overrun, measured square to the nut line.
  const Point back = seat.shelf ? Point{layout.nut_end - drawing_overrun / d.y, 0} : seat.back;
  const auto past = [&](int side, Point p) {
    return on_edge(layout, side, p, d) + (side == 0 ? -1 : 1) * drawing_overrun * d;
  };
  const Point a = past(0, back), b = past(0, seat.face), c = past(1, seat.face), e = past(1, back);
  return {closed("nut seat", {line(a, b), line(b, c), line(c, e), line(e, a)})};
}

Figure outline_figure(const Layout& layout) { return closed("outline", layout.outline); }

std::vector<Figure> binding_figures(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  std::vector<Figure> figures;
  if (!board.binding) return figures;
  const double ledge = ledge_width(*board.binding);
  for (const LineSegment& edge : layout.edges) {
    Point along = unit(edge.b - edge.a);
    if (along.x < 0) along = -1 * along;
    const bool low = edge.a.y + edge.b.y < 0;
    const Point p = edge.a + (low ? ledge : -ledge) * left_of(along);
    const auto [from, to] = reach_in(layout.outline, p, along);
    figures.push_back(open(low ? "binding at the lower edge" : "binding at the upper edge",
                           p + (from - drawing_overrun) * along, p + (to + drawing_overrun) * along));
  }
  return figures;
}

std::vector<Figure> side_dot_figures(const std::vector<SideDot>& dots) {
  std::vector<Figure> figures;
  for (const SideDot& dot : dots)
    figures.push_back(closed("side dot at fret " + std::to_string(dot.fret) + (dot.side > 0 ? ", treble edge" : ""),
                             strip_loop(dot.mouth, dot.mouth + dot.depth * dot.inward, 2 * dot.radius)));
  return figures;
}

std::vector<Figure> pin_figures(const Layout& layout) {
  std::vector<Figure> figures;
  for (std::size_t i = 0; i < layout.pins.size(); ++i)
    figures.push_back(closed("pin " + std::to_string(i + 1), circle(layout.pins[i].centre, layout.pins[i].radius)));
  return figures;
}

std::vector<Figure> cut_figures(const PreparedBoard& ready, CutLayer layer) {
  std::vector<Figure> figures;
  for (const FittedCut& fitted : ready.inlays().cuts) {
    const Cut& cut = ready.board().cuts[static_cast<std::size_t>(fitted.cut)];
    const CutLayer own = is_through(cut) ? CutLayer::through : is_from_below(cut) ? CutLayer::below : CutLayer::top;
    if (own != layer) continue;
    for (const Loop& loop : fitted.outlines) figures.push_back({"cut " + cut.name, loop, true, fitted.ellipse});
  }
  return figures;
}

bool same_figure(const Figure& a, const Figure& b) {
  if (a.closed != b.closed || a.pieces.size() != b.pieces.size()) return false;
  const auto near = [](Point p, Point q) { return distance(p, q) < tolerance::vertex; };
  for (const CurveSegment& segment : a.pieces) {
    const bool found = std::any_of(b.pieces.begin(), b.pieces.end(), [&](const CurveSegment& other) {
      const bool ends = (near(segment.a, other.a) && near(segment.b, other.b)) ||
                        (!a.closed && near(segment.a, other.b) && near(segment.b, other.a));
      return ends && near(segment.at(0.5), other.at(0.5));
    });
    if (!found) return false;
  }
  return true;
}

}  // namespace sagitta
