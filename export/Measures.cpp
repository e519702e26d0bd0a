#include "export/Measures.hpp"

#include <cstdio>

namespace sagitta {

std::string fixed_measure(const Board& board, double mm) {
  const bool inches = board.units == Units::inch;
  char buffer[400];
  std::snprintf(buffer, sizeof buffer, inches ? "%.3f" : "%.2f", inches ? mm / 25.4 : mm);
  return buffer;
}

std::string measure(const Board& board, double mm) {
  std::string text = fixed_measure(board, mm);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string unit_word(const Board& board) { return board.units == Units::inch ? "inches" : "millimetres"; }

std::string shown_name(const Board& board) { return board.name.empty() ? "fretboard" : board.name; }

}  // namespace sagitta
