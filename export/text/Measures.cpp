#include "text/Measures.hpp"

#include <cstdio>

#include "board/Length.hpp"

namespace sagitta {

namespace {

std::string with_decimals(Units units, double mm, int decimals) {
  char buffer[400];
  std::snprintf(buffer, sizeof buffer, "%.*f", decimals, mm / mm_per(units));
  return buffer;
}

int decimals_of(Units units) { return units == Units::inch ? 3 : 2; }

/// One more for a whole sixty-fourth of an inch.
int decimals_for(Units units, double mm) {
  return decimals_of(units) + (units == Units::inch && inch_fraction(mm).has_value());
}

}  // namespace

std::string fixed_measure(const Board& board, double mm) {
  return with_decimals(board.units, mm, decimals_of(board.units));
}

std::string gauge_measure(const Board& board, double mm) {
  return with_decimals(board.units, mm, decimals_of(board.units) + 1);
}

std::string measure(const Board& board, double mm) { return measure(board.units, mm); }

std::string measure(Units units, double mm) {
  std::string text = with_decimals(units, mm, decimals_for(units, mm));
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string measured_length(Units units, double mm) { return shown_length(mm, units, decimals_for(units, mm)); }

std::string stock_length(Units units, double mm) {
  const auto fraction = units == Units::inch ? inch_fraction(mm) : std::nullopt;
  return fraction ? *fraction + " in" : measured_length(units, mm);
}

std::string fine_length(Units units, double mm) { return shown_length(mm, units, units == Units::inch ? 4 : 2); }

std::string fine_measure(const Board& board, double mm) {
  const std::string text = fine_length(board.units, mm);
  return text.substr(0, text.find(' '));
}

std::string unit_word(const Board& board) { return board.units == Units::inch ? "inches" : "millimetres"; }

std::string shown_name(const Board& board) {
  const std::string name = board.name.empty() ? "fretboard" : board.name;
  return board.measured.serial.empty() ? name : name + ", no. " + board.measured.serial;
}

}  // namespace sagitta
