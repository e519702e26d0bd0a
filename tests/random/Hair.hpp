#pragma once

#include "random/Dice.hpp"

namespace sagitta::random_boards {

/// A length that nobody means: 0, or 1e-9 to 1e-3 mm either way, at times the snap or the vertex tolerance themselves.
double hair(Dice& dice);

/// The value as a person types it: as it is, or with two to four decimals.
double typed(Dice& dice, double value);

/// An angle near `degrees` as a person types it: rounded, at times off by 0.0005 to 0.01 degrees or 1e-7 to 1e-2.
double typed_turn(Dice& dice, double degrees);

}  // namespace sagitta::random_boards
