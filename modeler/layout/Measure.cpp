#include "layout/Measure.hpp"

#include <cmath>
#include <cstdio>

#include "board/Length.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

int decimals_of(Units units) { return units == Units::inch ? 4 : 2; }

/// Decimals that show a small length's first figure.
int decimals_for(Units units, double mm) {
  constexpr int most = 9;
  const double size = std::abs(mm) / mm_per(units);
  int decimals = decimals_of(units);
  while (size > 0 && decimals < most && size * std::pow(10, decimals) < 0.5) ++decimals;
  return decimals;
}

/// Rounded by `way` to a step that a builder would write.
std::string rounded_by(double (*way)(double), const Board& board, double mm) {
  const double steps = std::pow(10, decimals_of(board.units)) / mm_per(board.units);
  const double nearest = std::round(mm * steps) / steps;
  const double rounded = std::abs(mm - nearest) < tolerance::same ? nearest : way(mm * steps) / steps;
  return in_units(board, rounded == 0 ? mm : rounded);
}

}  // namespace

std::string plain(double value) {
  char text[64];
  std::snprintf(text, sizeof text, "%.4f", value);
  std::string result = text;
  while (result.back() == '0') result.pop_back();
  if (result.back() == '.') result.pop_back();
  return result == "-0" ? "0" : result;
}

std::string in_units(Units units, double mm) { return shown_length(mm, units, decimals_for(units, mm)); }

std::string in_units(const Board& board, double mm) { return in_units(board.units, mm); }

std::string in_units_up(const Board& board, double mm) {
  return rounded_by([](double steps) { return std::ceil(steps); }, board, mm);
}

std::string in_units_down(const Board& board, double mm) {
  return rounded_by([](double steps) { return std::floor(steps); }, board, mm);
}

std::string number_in_units(const Board& board, double mm) {
  const std::string text = in_units(board, mm);
  return text.substr(0, text.find(' '));
}

}  // namespace sagitta
