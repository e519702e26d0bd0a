// Heel ends that cut slots, and tongues.

#include <algorithm>

#include "random/Draw.hpp"

namespace sagitta::random_boards {
namespace {

double rounded(Dice& dice, double value) { return dice.chance(0.7) ? std::round(value * 100) / 100 : value; }

void cut_slots(Dice& dice, Shape& shape) {
  shape.ends_cut_slots = dice.chance(0.8);
  if (shape.ends_cut_slots) shape.past_last_fret = rounded(dice, dice.real(-40, 15));
}

void draw_slant(Dice& dice, Shape& shape) {
  shape.heel = Heel::slant;
  shape.heel_arc_radius.reset();
  shape.heel_angle =
      dice.chance(0.1) ? dice.one_of({-60.0, -45.0, 0.0, 45.0, 60.0}) : rounded(dice, dice.real(-60, 60));
}

void draw_hollow(Dice& dice, const Board& board, Shape& shape) {
  shape.heel = Heel::hollow;
  shape.corner_radius = 0;
  shape.heel_arc_radius = rounded(dice, board.strings.saddle_spread / 2 + dice.real(3, 40));
}

void draw_tongue(Dice& dice, Board& board) {
  Shape& shape = board.board;
  if (board.scale.bass && dice.chance(0.5)) shape.heel = Heel::fret;
  if (shape.heel == Heel::arc || shape.heel == Heel::hollow) shape.heel = Heel::square;
  shape.heel_arc_radius.reset();
  shape.ends_cut_slots = false;
  shape.past_last_fret = rounded(dice, dice.real(0.4, 8));
  Tongue& tongue = board.tongue.emplace();
  tongue.frets = dice.whole(1, 4);
  if (!board.scale.cents.empty())
    for (int i = 0; i < tongue.frets; ++i) board.scale.cents.push_back(board.scale.cents.back() + dice.real(60, 200));
  tongue.strings = dice.whole(1, std::max(1, board.strings.count - 1));
  if (dice.chance(0.6)) tongue.margin = rounded(dice, dice.real(0.5, 6));
  if (dice.chance(0.5)) tongue.past_last_fret = rounded(dice, dice.real(0.5, 12));
  if (dice.chance(0.4)) tongue.corner_radius = rounded(dice, dice.real(0.3, 6));
}

}  // namespace

void draw_ends(Dice& dice, Board& board) {
  const int kind = dice.whole(0, 2);
  if (kind == 0)
    draw_hollow(dice, board, board.board);
  else if (kind == 1 || dice.chance(0.3))
    draw_slant(dice, board.board);
  if (kind == 2)
    draw_tongue(dice, board);
  else
    cut_slots(dice, board.board);
  if (dice.chance(0.3)) board.board.edge_margin.reset();
  if (!board.board.edge_margin && !board.board.nut_margin && !board.board.nut_width)
    board.board.edge_margin = LengthPair(rounded(dice, dice.real(1, 6)), rounded(dice, dice.real(1, 6)));
}

}  // namespace sagitta::random_boards
