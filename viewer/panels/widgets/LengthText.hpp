#pragma once

/// Values as the window shows and reads them: lengths in the unit of the user's choice, arithmetic and other units
/// welcome when typed.

#include <string>
#include <variant>

#include "board/Fields.hpp"
#include "board/Length.hpp"
#include "document/Settings.hpp"

namespace sagitta::viewer {

/// How lengths are shown: the unit, inches as fractions where they are exact, and the decimal mark.
struct Manner {
  Units units = Units::mm;
  bool fractions = false;
  bool comma = false;  ///< decimals after a comma; only where what is shown can be typed as it stands
};
Manner manner_of(Display display, const Board& board);

/// "647.7 mm", "25.5 in", "25 1/2 in". `decimals` of a millimetre; inches get one and a half more.
std::string shown(double mm, const Manner& manner, int decimals = 3);
/// The same with all its decimals, so that figures under each other line up.
std::string shown_in_column(double mm, const Manner& manner, int decimals = 3);
/// As shown(), without the unit and always with a point: for places and lists, where commas part the numbers.
std::string shown_bare(double mm, const Manner& manner, int decimals = 3);
/// A plain number with all its decimals.
std::string fixed_number(double value, int decimals);
/// A plain number without trailing zeros.
std::string shown_number(double value, int decimals = 4);

/// A field's value in words: "648 mm", "3, 5, 7, 9", "string-line", "yes"; "" when not given.
std::string shown_value(const Field& field, const Value& value, const Manner& manner);
/// "2 mm to 12 mm", "1 to 96".
std::string shown_range(const Field& field, const Manner& manner);

/// What a typed text gives to a field, or why it cannot be taken, in a builder's words.
std::variant<Value, std::string> typed_value(const Field& field, const std::string& text, const Manner& manner);

/// Why a field cannot hold the value; "" when it can.
std::string refusal(const Field& field, const Value& value, const Manner& manner);

}  // namespace sagitta::viewer
