#include <algorithm>

#include "random/Draw.hpp"

namespace sagitta::random_boards {
namespace {

/// Height of the wood at the lower of the bass edge's two ends.
double edge_height(const Layout& layout, const Board& board) {
  const Surface surface = surface_of(board, layout);
  return std::min(surface.height(layout.edges[0].a), surface.height(layout.edges[0].b));
}

void draw_side_dots(Dice& dice, const Layout& layout, Board& board) {
  SideDots dots;
  for (int fret = 1; fret <= board.scale.frets; ++fret) {
    if (!dice.chance(0.2)) continue;
    (dice.chance(0.2) ? dots.double_frets : dots.frets).push_back(fret);
  }
  dots.diameter = std::min(dice.real(0.8, 2.5), 0.7 * edge_height(layout, board));
  dots.depth = dice.real(0.5, 4);
  dots.spread = dots.diameter + dice.real(0.5, 3);
  if (!dots.frets.empty() || !dots.double_frets.empty()) board.side_dots = dots;
}

void draw_binding(Dice& dice, const Board& plain, Board& board) {
  Binding binding;
  binding.width = plain.slots.ends == SlotEnds::blind && dice.chance(0.3) ? std::max(0.2, plain.slots.edge_left)
                                                                          : dice.real(0.5, 3);
  if (dice.chance(0.7))
    binding.height = dice.chance(0.3) ? std::max(0.2, slot_depth(plain)) : dice.real(0.4, 0.7 * plain.board.thickness);
  board.binding = binding;
}

void draw_pins(Dice& dice, const Layout& layout, Board& board) {
  Pins pins;
  pins.diameter = dice.real(1, 5);
  pins.depth = dice.real(0.5, 0.9 * board.board.thickness);
  for (int n = dice.whole(1, 4); n > 0; --n) {
    if (!layout.slots.empty() && dice.chance(0.25)) {
      const Slot& slot = dice.one_of(layout.slots);
      pins.at.push_back({slot.bass_end.x, 0});
    } else if (!layout.markers.empty() && dice.chance(0.4)) {
      const Point at = dice.one_of(layout.markers).centre;
      pins.at.push_back({at.x + dice.one_of({0.0, dice.real(-4, 4)}), at.y});
    } else {
      const double x = dice.real(layout.nut_end, layout.heel_end);
      pins.at.push_back({x, layout.half_width(x) * dice.one_of({-1.0, 1.0, dice.real(-1, 1)})});
    }
  }
  board.pins = pins;
}

}  // namespace

void draw_extras(Dice& dice, const Layout& layout, Board& board) {
  if (dice.chance(0.3)) draw_side_dots(dice, layout, board);
  if (dice.chance(0.3)) draw_binding(dice, board, board);
  if (dice.chance(0.3)) draw_pins(dice, layout, board);
  if (dice.chance(0.2)) board.sanding = dice.real(0.05, 0.4);
  if (dice.chance(0.15))
    board.order = {Operation::radius, Operation::pockets, Operation::inlay, Operation::slots, Operation::outline};
}

}  // namespace sagitta::random_boards
