#pragma once

/// Areas, volumes, weights, forces and differences of temperature for messages, in the board's units.

#include <string>

#include "board/Board.hpp"

namespace sagitta {

/// "2.55 mm2", "0.004 in2".
std::string shown_area(const Board& board, double mm2);
/// "12 mm3", "0.0007 in3".
std::string shown_volume(const Board& board, double mm3);
/// "146 g", "5.2 oz".
std::string shown_weight(const Board& board, double grams);
/// "12 N", "2.7 lbf".
std::string shown_force(const Board& board, double newtons);
/// "15 degrees Celsius", "27 degrees Fahrenheit".
std::string shown_warming(const Board& board, double kelvin);

}  // namespace sagitta
