#pragma once

/// Lengths and names as drawings and tables show them.

#include <string>

#include "board/Board.hpp"

namespace sagitta {

/// In the board's own units, without the unit: millimetres to 0.01, inches to 0.001, whole sixty-fourths of an inch to
/// 0.0001 (5/16 is 0.3125); all without needless zeros.
std::string measure(const Board& board, double mm);
std::string measure(Units units, double mm);
/// The same with the unit: "61.03 mm", "2.403 in".
std::string measured_length(Units units, double mm);
/// Of what is bought or set out with a rule, blanks, cutters, widths: inches as the fraction where they are whole
/// sixty-fourths, "1 11/16 in"; else as measured_length().
std::string stock_length(Units units, double mm);
/// As measured_length(), for depths, slots and other small lengths: "3.11 mm", "0.1225 in".
std::string fine_length(Units units, double mm);
/// The same without the unit.
std::string fine_measure(const Board& board, double mm);
/// Of slots and gaps that are held against each other: mm to 0.001, inches to 0.0001.
std::string gauge_measure(const Board& board, double mm);
/// measure() with all its decimals, for columns of numbers.
std::string fixed_measure(const Board& board, double mm);
/// "millimetres" or "inches".
std::string unit_word(const Board& board);
/// The board's name, or "fretboard", with its serial number where it has one: "heron six, no. 17".
std::string shown_name(const Board& board);

}  // namespace sagitta
