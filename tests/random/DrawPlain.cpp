#include <algorithm>
#include <cmath>

#include "random/Draw.hpp"

namespace sagitta::random_boards {
namespace {

/// Dyadic sizes make contacts exact; others do not.
double rounded(Dice& dice, double value) {
  const double step = dice.one_of({0.0, 1.0 / 64, 0.05, 0.5});
  return step == 0 ? value : std::max(step, step * std::round(value / step));
}

int draw_frets(Dice& dice, Space space) {
  if (space == Space::near) return dice.whole(1, 6);
  return space == Space::whole && dice.chance(0.1) ? dice.one_of({1, 2, 36, 60, 96}) : dice.whole(3, 27);
}

void draw_scale(Dice& dice, Space space, Scale& scale) {
  const bool whole = space != Space::core;
  const double length = rounded(dice, whole ? dice.real(200, 1100) : dice.real(330, 880));
  if (dice.chance(0.35)) {
    const double spread =
        dice.chance(0.15) ? 0 : dice.real(0, whole ? 0.14 : 0.08) * (whole && dice.chance(0.15) ? -1 : 1);
    scale.treble = length;
    scale.bass = length * (1 + spread);
  } else {
    scale.length = length;
  }
  scale.frets = draw_frets(dice, space);
  if (scale.bass) scale.square_fret = dice.whole(0, scale.frets);
  const double tuning = dice.real(0, 1);
  if (tuning < 0.2) {
    scale.steps_per_octave = dice.one_of({5, 7, 17, 19, 24, 31});
  } else if (tuning < 0.35) {
    for (double cents = 0; static_cast<int>(scale.cents.size()) < scale.frets;)
      scale.cents.push_back(cents += dice.chance(0.3) ? 1200.0 / dice.whole(1, 12) : dice.real(40, 260));
  }
  scale.zero_fret = whole && dice.chance(0.15);
}

void draw_outline(Dice& dice, bool whole, Board& board) {
  Shape& shape = board.board;
  shape.thickness = rounded(dice, whole ? dice.real(3, 12) : dice.real(5, 8));
  const double nut = board.strings.nut_spread, end = board.strings.saddle_spread;
  switch (dice.whole(0, 2)) {
    case 0:
      shape.edge_margin = rounded(dice, dice.real(1, 6));
      break;
    case 1:
      shape.nut_margin = rounded(dice, dice.real(1, 6));
      shape.heel_margin = rounded(dice, dice.real(1, 6));
      break;
    default:
      shape.nut_width = rounded(dice, nut + dice.real(2, 12));
      shape.heel_width = rounded(dice, std::max(nut, end) + dice.real(2, 16));
  }
  if (dice.chance(0.6)) shape.behind_nut = rounded(dice, dice.real(0.5, 15));
  shape.past_last_fret = rounded(dice, dice.chance(0.2) ? dice.real(0.8, 3) : dice.real(3, 30));
  if (!whole) return;
  shape.heel = dice.one_of({Heel::square, Heel::square, Heel::arc, Heel::hollow, Heel::fret});
  if (shape.heel == Heel::arc || shape.heel == Heel::hollow) shape.heel_arc_radius = rounded(dice, dice.real(40, 400));
  if (dice.chance(0.35)) shape.corner_radius = rounded(dice, dice.real(0.3, 12));
}

double draw_radius(Dice& dice, bool whole, double half_width) {
  if (whole && dice.chance(0.08)) return dice.one_of({1e4, 1e5, 1e6});
  if (whole && dice.chance(0.1)) return half_width + 3 + dice.real(0.001, 20);
  return rounded(dice, dice.real(4, 20) * half_width);
}

void draw_surface(Dice& dice, bool whole, double half_width, Board& board) {
  SurfaceSpec& surface = board.surface;
  surface.profile =
      dice.one_of({Profile::flat, Profile::single, Profile::compound, Profile::compound, Profile::string_line});
  if (whole && dice.chance(0.2)) surface.profile = Profile::even_edge;
  if (surface.profile != Profile::flat) surface.radius_at_nut = draw_radius(dice, whole, half_width);
  if (surface.profile == Profile::compound) {
    surface.radius_at_heel = dice.chance(0.1)
                                 ? surface.radius_at_nut.value() * (1 + 1e-9)
                                 : surface.radius_at_nut.value() * dice.real(whole ? 0.8 : 1, whole ? 4 : 2);
    if (whole) surface.heel_at = dice.one_of({HeelAt::heel, HeelAt::last_fret});
  }
  if (whole && dice.chance(0.3)) {
    surface.fall_from_fret = dice.whole(1, board.scale.frets);
    surface.fall = rounded(dice, dice.real(0.1, 1.2));
  }
}

void draw_nut(Dice& dice, bool whole, Board& board) {
  Nut& nut = board.nut;
  nut.seat = dice.one_of({NutSeat::none, NutSeat::slot, NutSeat::shelf});
  if (nut.seat != NutSeat::none) {
    nut.width = rounded(dice, dice.real(1.5, 8));
    nut.depth = rounded(dice, dice.real(0.3, 0.6 * board.board.thickness));
    if (whole && dice.chance(0.2)) nut.compensation = rounded(dice, dice.real(0.1, 1.5));
  }
  if (board.scale.zero_fret) nut.distance = rounded(dice, dice.real(0.25, 4));
}

void draw_slots(Dice& dice, bool whole, Board& board) {
  Slots& slots = board.slots;
  slots.width = rounded(dice, dice.real(0.35, 0.75));
  slots.depth = rounded(dice, dice.real(0.8, 0.5 * board.board.thickness));
  slots.floor = dice.one_of({SlotFloor::arc, SlotFloor::level});
  if (whole && dice.chance(0.35)) {
    slots.ends = SlotEnds::blind;
    slots.edge_left = dice.chance(0.1) ? dice.real(0.05, 20) : rounded(dice, dice.real(0.1, 4));
  }
}

}  // namespace

Board draw_plain(Dice& dice, Space space) {
  const bool whole = space != Space::core;
  Board board;
  board.name = "random";
  board.units = dice.chance(0.2) ? Units::inch : Units::mm;
  board.hand = dice.chance(0.25) ? Hand::left : Hand::right;
  draw_scale(dice, space, board.scale);
  board.strings.count = whole ? dice.whole(1, 18) : dice.whole(3, 9);
  board.strings.nut_spread = rounded(dice, dice.real(20, whole ? 90 : 55));
  board.strings.saddle_spread = rounded(dice, board.strings.nut_spread * dice.real(dice.chance(0.2) ? 1 : 1.1, 1.6));
  draw_outline(dice, whole, board);
  draw_surface(dice, whole, board.strings.saddle_spread / 2 + 5, board);
  draw_nut(dice, whole, board);
  draw_slots(dice, whole, board);
  return board;
}

}  // namespace sagitta::random_boards
