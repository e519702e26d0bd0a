// Cuts of the builder's own that touch, coincide with, lie flush to or cross what the board has.

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "random/Carrier.hpp"
#include "random/Draw.hpp"
#include "random/Hair.hpp"

namespace sagitta::random_boards {
namespace {

constexpr double pi = std::numbers::pi;

double side_of(const Board& board) { return board.hand == Hand::left ? -1 : 1; }

/// 0 at most times: exactly there.
double beside(Dice& dice) { return dice.chance(0.6) ? 0 : dice.chance(0.5) ? hair(dice) : dice.real(-3, 3); }

void draw_size(Dice& dice, const Layout& layout, Cut& cut) {
  const double widest = 1.6 * layout.half_width_at_nut;
  cut.shape = dice.one_of({CutShape::dot, CutShape::block, CutShape::block, CutShape::oval});
  if (cut.shape == CutShape::dot) {
    cut.diameter = dice.real(1, dice.chance(0.2) ? widest : 14);
    return;
  }
  cut.along = dice.real(2, dice.chance(0.3) ? 120 : 25);
  cut.across = dice.real(1.5, dice.chance(0.3) ? widest : 14);
}

/// With a side on a line, a corner or an end on it, its middle there, or in the same way beside a circle.
void draw_place(Dice& dice, const Board& board, const Layout& layout, Cut& cut) {
  const double way = dice.chance(0.4) ? dice.whole(0, 3) * pi / 2 : dice.real(0, 2 * pi);
  const Carrier carrier = any_carrier(dice, board, layout);
  const Carrier line = tangent(carrier, turned({1, 0}, way));
  const Point out = dice.one_of({-1.0, 1.0, 0.0}) * left_of(line.along);
  double half = cut.diameter.value_or(0) / 2, turn = 0;
  if (cut.shape != CutShape::dot) {
    const bool endways = dice.chance(0.5);
    half = (endways ? *cut.along : *cut.across) / 2;
    turn = std::atan2(line.along.y, line.along.x) * 180 / pi + (endways ? 90 : 0);
    if (dice.chance(0.2)) turn += dice.real(-90, 90);
  }
  const double share = dice.chance(0.3) ? dice.one_of({-1.0, 0.0, 1.0}) : dice.real(-1, 1);
  const Point at = line.at + (share * line.reach) * line.along + (half + beside(dice)) * out;
  cut.at = {typed(dice, at.x), typed(dice, side_of(board) * at.y)};
  cut.turn_degrees = typed(dice, side_of(board) * std::remainder(turn, 180));
}

void draw_depth(Dice& dice, const Board& board, Cut& cut) {
  const double t = board.board.thickness;
  cut.from = dice.chance(0.45) ? CutFrom::below : CutFrom::top;
  if (dice.chance(0.3)) {
    cut.from = CutFrom::top;
    cut.depth = std::numeric_limits<double>::infinity();
    return;
  }
  std::vector<double> floors{slot_depth(board)};  // below the top of the finished board
  if (board.nut.seat != NutSeat::none) floors.push_back(board.nut.depth);
  if (board.pins) floors.push_back(t - board.pins->depth);
  for (const Inlay& inlay : board.inlays) floors.push_back(inlay.depth);
  for (const Cut& other : board.cuts)
    if (std::isfinite(other.depth)) floors.push_back(other.from == CutFrom::top ? other.depth : t - other.depth);
  const double under =
      dice.chance(0.5) ? dice.one_of(floors) + (dice.chance(0.3) ? hair(dice) : 0) : dice.real(0.1, 0.8) * t;
  cut.depth = std::clamp(cut.from == CutFrom::top ? under : t - under, 0.2, 0.95 * t);
}

}  // namespace

void draw_cuts(Dice& dice, const Layout& layout, Board& board) {
  for (int i = 0, cuts = dice.whole(1, 3); i < cuts; ++i) {
    Cut cut;
    cut.name = "own " + std::to_string(i + 1);
    draw_size(dice, layout, cut);
    draw_place(dice, board, layout, cut);
    draw_depth(dice, board, cut);
    board.cuts.push_back(cut);
  }
  if (!dice.chance(0.2)) return;
  Cutter cutter;
  cutter.name = "clearing";
  cutter.use = {CutterUse::pocket_clear};
  cutter.diameter = dice.real(0.8, 4);
  cutter.cutting_length = 12;
  board.cutters.push_back(cutter);
}

}  // namespace sagitta::random_boards
