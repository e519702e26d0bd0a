#include "random/Carrier.hpp"

#include <algorithm>

#include "oracle/Pocket.hpp"

namespace sagitta::random_boards {
namespace {

Carrier line_between(Point a, Point b) { return {between(a, b, 0.5), unit(b - a), distance(a, b) / 2}; }
Carrier round_about(Point centre, double radius) { return {centre, {}, 0, radius}; }

void add_loop(const Loop& loop, std::vector<Carrier>& out) {
  for (const CurveSegment& segment : loop) {
    if (segment.is_arc())
      out.push_back(round_about(segment.centre, segment.radius));
    else if (segment.length() > 0)
      out.push_back(line_between(segment.a, segment.b));
  }
}

void add_slot(const Slot& slot, std::vector<Carrier>& out) {
  const Point d = unit(slot.treble_end - slot.bass_end);
  const double half = slot.width / 2;
  for (const double side : {-half, half})
    out.push_back(line_between(slot.bass_end + side * left_of(d), slot.treble_end + side * left_of(d)));
  if (!slot.blind) return;
  out.push_back(round_about(slot.bass_end + half * d, half));
  out.push_back(round_about(slot.treble_end - half * d, half));
}

std::vector<Carrier> of_nut(const Layout& layout) {
  std::vector<Carrier> lines;
  if (!layout.nut) return lines;
  const double reach = layout.half_width(0);
  lines.push_back({layout.nut->face, layout.nut->direction, reach});
  if (!layout.nut->shelf) lines.push_back({layout.nut->back, layout.nut->direction, reach});
  return lines;
}

std::vector<Carrier> of_binding(const Board& board, const Layout& layout) {
  std::vector<Carrier> lines;
  if (!board.binding) return lines;
  for (int side = 0; side < 2; ++side) {
    Carrier edge = line_between(layout.edges[side].a, layout.edges[side].b);
    const Point out = side == 0 ? Point{0, -1} : Point{0, 1};
    const Point across = left_of(edge.along);
    edge.at = edge.at + (dot(across, out) > 0 ? -1 : 1) * board.binding->width * across;
    lines.push_back(edge);
  }
  return lines;
}

std::vector<Carrier> of_ends(const Layout& layout) {
  std::vector<Carrier> lines;
  add_loop(rectangle(layout.strip.low, layout.strip.high), lines);
  add_loop(rectangle(layout.blank.low, layout.blank.high), lines);
  if (layout.fall_start) lines.push_back({{*layout.fall_start, 0}, {0, 1}, layout.half_width(*layout.fall_start)});
  return lines;
}

}  // namespace

std::vector<std::vector<Carrier>> carriers(const Board& board, const Layout& layout) {
  std::vector<Carrier> outline, slots, pockets, pins;
  add_loop(layout.outline, outline);
  for (const Slot& slot : layout.slots) add_slot(slot, slots);
  for (const Marker& marker : layout.markers) add_loop(oracle::pocket_of(board, marker), pockets);
  for (const Pin& pin : layout.pins) pins.push_back(round_about(pin.centre, pin.radius));
  std::vector<std::vector<Carrier>> kinds{outline,         slots,   of_nut(layout), of_binding(board, layout),
                                          of_ends(layout), pockets, pockets,        pins};
  std::erase_if(kinds, [](const auto& kind) { return kind.empty(); });
  return kinds;
}

Carrier any_carrier(Dice& dice, const Board& board, const Layout& layout) {
  return dice.one_of(dice.one_of(carriers(board, layout)));
}

Carrier tangent(const Carrier& carrier, Point towards) {
  if (!carrier.round()) return carrier;
  return {carrier.at + carrier.radius * towards, left_of(towards), 0, 0};
}

}  // namespace sagitta::random_boards
