#include "text/Measures.hpp"

#include <cstdio>

namespace sagitta {

namespace {

std::string fixed(Units units, double mm) {
  const bool inches = units == Units::inch;
  char buffer[400];
  std::snprintf(buffer, sizeof buffer, inches ? "%.3f" : "%.2f", inches ? mm / 25.4 : mm);
  return buffer;
}

}  // namespace

std::string fixed_measure(const Board& board, double mm) { return fixed(board.units, mm); }

std::string measure(const Board& board, double mm) { return measure(board.units, mm); }

std::string measure(Units units, double mm) {
  std::string text = fixed(units, mm);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string unit_word(const Board& board) { return board.units == Units::inch ? "inches" : "millimetres"; }

std::string shown_name(const Board& board) { return board.name.empty() ? "fretboard" : board.name; }

}  // namespace sagitta
