#pragma once

/// Writing a board back as TOML.

#include <string>
#include <string_view>

#include "board/Board.hpp"
#include "board/Fields.hpp"

namespace sagitta {

/// The board as a board file: keys in the order of the field table, in the board's units; of keys that need not be
/// given only those that differ from their defaults. Reading it back gives an equal Board, apart from two things: what
/// the board's own choices do not use is not written (see tidy), and `base` is left out, since reading has merged it
/// in.
std::string write_board(const Board& board);

/// A field's value as it stands behind the equals sign. A length is a bare number in the units; where no inch decimal
/// reads back to the identical double, or millimetres are much shorter, it is a text in mm.
std::string value_text(const Field& field, const Value& value, Units units);

/// The same for one length.
std::string length_text(double mm, Units units, bool per_minute = false);

/// A text in double quotes, escaped as TOML needs.
std::string quoted(std::string_view text);
/// The same for a message: shortened when it is long.
std::string shown_text(std::string_view text);
/// A key, in quotes when it needs them.
std::string key_text(std::string_view key);

/// The lines "key = value" of one row.
std::string row_text(const Board& board, const Table& table, std::size_t index);
/// "[scale]", "[[inlays]]", "[materials.NAME]".
std::string header_text(const Board& board, const Table& table, std::size_t index);

}  // namespace sagitta
