#include "rules/ShownMeasures.hpp"

#include <cmath>
#include <cstdio>

#include "board/Length.hpp"

namespace sagitta {
namespace {

constexpr double fahrenheit_per_kelvin = 1.8;
/// International avoirdupois ounce and pound-force, exact (NIST SP 811, appendix B.8).
constexpr double grams_per_ounce = 28.349523125, newtons_per_pound = 4.4482216152605;

/// At least two figures that are not 0.
std::string shown(double value, const std::string& unit) {
  const double size = std::abs(value);
  char text[64];
  std::snprintf(text, sizeof text, size >= 10 ? "%.0f" : size >= 0.1 ? "%.2f" : "%.4f", value);
  return text + (" " + unit);
}

}  // namespace

std::string shown_area(const Board& board, double mm2) {
  const double unit = mm_per(board.units);
  return shown(mm2 / unit / unit, std::string(unit_name(board.units)) + "2");
}

std::string shown_volume(const Board& board, double mm3) {
  const double unit = mm_per(board.units);
  return shown(mm3 / unit / unit / unit, std::string(unit_name(board.units)) + "3");
}

std::string shown_weight(const Board& board, double grams) {
  const bool inches = board.units == Units::inch;
  char text[64];
  std::snprintf(text, sizeof text, inches ? "%.1f oz" : "%.0f g", inches ? grams / grams_per_ounce : grams);
  return text;
}

std::string shown_force(const Board& board, double newtons) {
  const bool inches = board.units == Units::inch;
  char text[64];
  std::snprintf(text, sizeof text, inches ? "%.1f lbf" : "%.0f N", inches ? newtons / newtons_per_pound : newtons);
  return text;
}

std::string shown_warming(const Board& board, double kelvin) {
  const bool inches = board.units == Units::inch;
  return std::to_string(std::lround(inches ? fahrenheit_per_kelvin * kelvin : kelvin)) +
         (inches ? " degrees Fahrenheit" : " degrees Celsius");
}

}  // namespace sagitta
