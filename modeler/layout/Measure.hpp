#pragma once

/// Lengths as text for messages.

#include <string>

#include "board/Board.hpp"

namespace sagitta {

/// "12.5 mm", "0.49213 in": in the board's units, mm to four decimals and inches to five, without trailing zeros. For
/// messages, whose reader sets a key to what is said: more decimals than paper has.
std::string in_units(const Board& board, double mm);
/// "12.5": the same without the unit.
std::string number_in_units(const Board& board, double mm);
/// A number that is no length, to four decimals, without trailing zeros.
std::string plain(double value);

}  // namespace sagitta
