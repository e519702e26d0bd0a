#include "layout/Measure.hpp"

#include <cstdio>

#include "board/Length.hpp"

namespace sagitta {

std::string plain(double value) {
  char text[64];
  std::snprintf(text, sizeof text, "%.4f", value);
  std::string result = text;
  while (result.back() == '0') result.pop_back();
  if (result.back() == '.') result.pop_back();
  return result == "-0" ? "0" : result;
}

std::string in_units(const Board& board, double mm) {
  return shown_length(mm, board.units, board.units == Units::inch ? 5 : 4);
}

std::string number_in_units(const Board& board, double mm) {
  const std::string text = in_units(board, mm);
  return text.substr(0, text.find(' '));
}

}  // namespace sagitta
