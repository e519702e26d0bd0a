#pragma once

/// Lengths as a builder writes them: "648", "25 1/2 in", "1-11/16 in", "0.023 in", "6.35 mm", and sums of such.

#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "board/Board.hpp"

namespace sagitta {

/// Millimetres in an inch: exact since the international yard of 1959.
inline constexpr double mm_per_inch = 25.4;

/// Millimetres in the unit.
constexpr double mm_per(Units units) { return units == Units::inch ? mm_per_inch : 1; }
/// A number of the unit in mm. Inches are taken as the decimal that is written, so that 0.023 in is the same double as
/// 0.5842 mm and 25.5 in the same as 647.7 mm.
double to_mm(double value, Units units);
/// "mm" or "in".
std::string_view unit_name(Units units);

/// A length that was read.
struct Length {
  double mm = 0;
  std::optional<Units> unit;  ///< the unit that was written, when one was; of a sum, the first
  bool plain = true;          ///< one quantity, no arithmetic
  bool fraction = false;      ///< written with a fraction: "1-11/16"
  bool per_minute = false;    ///< "/min" stood behind it
};

/// Why a text is no length.
struct LengthError {
  int column = 1;  ///< 1-based byte of the text where reading stopped
  std::string message;
};

/// Reads a length or an expression of lengths: numbers, mixed numbers ("25 1/2", "1-11/16"), units (mm, cm, in, inch,
/// inches, "), + - * / and brackets. What carries no unit is in `units`, but a factor or a divisor is a bare number. A
/// minus between a whole number and a fraction without blanks ("1-11/16") joins a mixed number; "1 - 11/16" subtracts.
std::variant<Length, LengthError> read_length(std::string_view text, Units units);

/// The shortest decimal that reads back to the identical double; TOML accepts it. The value must be finite.
std::string decimal(double value);

/// The shortest bare decimal in the unit that reads back to the identical mm, if there is one: in inches some doubles
/// have none.
std::optional<std::string> bare_length(double mm, Units units);

/// The length for reading: at most `decimals` places, no trailing zeros, with its unit: "647.7 mm".
std::string shown_length(double mm, Units units, int decimals = 4);

/// Inches as whole and fraction, "25 1/2" or "11/16", when the length is a multiple of 1/64 in within 1e-9 mm.
std::optional<std::string> inch_fraction(double mm);

}  // namespace sagitta
