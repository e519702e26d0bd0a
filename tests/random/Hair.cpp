#include "random/Hair.hpp"

#include <cmath>

#include "plane/Tolerance.hpp"

namespace sagitta::random_boards {
namespace {

double either_way(Dice& dice, double value) { return dice.chance(0.5) ? value : -value; }

double rounded_to(double step, double value) { return step == 0 ? value : step * std::round(value / step); }

}  // namespace

double hair(Dice& dice) {
  if (dice.chance(0.2)) return 0;
  if (dice.chance(0.2))
    return either_way(dice, dice.one_of({0.5, 1.0, 1.5, 2.0}) * dice.one_of({tolerance::snap, tolerance::vertex}));
  return either_way(dice, std::pow(10.0, dice.real(-9, -3)));
}

double typed(Dice& dice, double value) { return rounded_to(dice.one_of({0.0, 0.0, 1e-4, 1e-3, 1e-2}), value); }

double typed_turn(Dice& dice, double degrees) {
  const double turn = rounded_to(dice.one_of({0.0, 1e-4, 1e-3, 1e-2}), degrees);
  switch (dice.whole(0, 3)) {
    case 0:
      return turn + either_way(dice, dice.one_of({0.0005, 0.001, 0.002, 0.01}));
    case 1:
      return turn + either_way(dice, std::pow(10.0, dice.real(-7, -2)));
    default:
      return turn;
  }
}

}  // namespace sagitta::random_boards
