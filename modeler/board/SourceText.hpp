#pragma once

/// The text of a board file, fetched and looked over before it is parsed.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "board/Problem.hpp"

namespace sagitta {

/// No board file is larger. Bytes.
inline constexpr std::size_t largest_file = 1 << 20;
/// No key has more parts: the parser runs out of stack on very long ones.
inline constexpr int most_dots = 32;

/// The file's text, or why it cannot be had: missing, a directory, not readable, too large. `shown_name` is the name
/// that problems carry.
std::variant<std::string, Problem> fetch_text(const std::string& path, const std::string& shown_name);

/// The text behind a byte order mark, which some editors write before UTF-8: it says nothing and takes no column.
std::string_view without_byte_order_mark(std::string_view text);

/// What makes a text unfit for the parser: size, encoding, junk, a key of too many parts; nothing when it is fit.
std::optional<Problem> look_over(std::string_view text, const std::string& shown_name);

/// Bytes of the well-formed UTF-8 character at the front of the text; 0 when it is not well formed.
/// Source: the Unicode Standard, table 3-7.
std::size_t utf8_length(std::string_view text);

}  // namespace sagitta
