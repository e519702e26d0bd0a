#pragma once

/// Lengths as text for messages.

#include <string>

#include "board/Board.hpp"

namespace sagitta {

/// "12.5 mm", "0.4921 in": in the board's units, mm to two decimals and inches to four, without trailing zeros; what is
/// smaller than that to its first figure, so that no length reads as 0.
std::string in_units(const Board& board, double mm);
std::string in_units(Units units, double mm);
/// The same, rounded up or down: for what a key is to be at least or at most, and for what falls short of a limit or
/// goes over it.
std::string in_units_up(const Board& board, double mm);
std::string in_units_down(const Board& board, double mm);
/// "12.5": in_units() without the unit.
std::string number_in_units(const Board& board, double mm);
/// A number that is no length, to four decimals, without trailing zeros.
std::string plain(double value);

}  // namespace sagitta
