#include "board/LineSlip.hpp"

#include <algorithm>

#include "board/Length.hpp"
#include "board/SourceText.hpp"
#include "board/Writer.hpp"

namespace sagitta {
namespace {

constexpr std::string_view blanks = " \t";

/// Quotes as word processors set them: left and right, double and single, low and angular.
constexpr std::string_view curly_quotes[] = {"\u201C", "\u201D", "\u201E", "\u201F", "\u2018",
                                             "\u2019", "\u201A", "\u00AB", "\u00BB"};

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

/// Where straight quotes, or a comment, begin or end the text that the parser reads as values.
std::size_t end_of_values(std::string_view line) {
  char quote = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const char c = line[i];
    if (quote != 0) {
      if (c == quote) quote = 0;
    } else if (c == '"' || c == '\'') {
      quote = c;
    } else if (c == '#') {
      return i;
    }
  }
  return line.size();
}

int column_of(std::string_view line, std::size_t offset) {
  int column = 1;
  for (std::size_t i = 0; i < offset; i += std::max<std::size_t>(utf8_length(line.substr(i)), 1)) ++column;
  return column;
}

/// Where the first curly quote stands outside of straight quotes.
std::size_t first_curly_quote(std::string_view line) {
  char quote = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const char c = line[i];
    if (c == '"' || c == '\'') quote = quote == 0 ? c : quote == c ? 0 : quote;
    if (quote != 0) continue;
    for (const std::string_view curly : curly_quotes)
      if (line.substr(i).starts_with(curly)) return i;
  }
  return std::string_view::npos;
}

std::string with_straight_quotes(std::string_view line) {
  std::string straight;
  while (!line.empty()) {
    const auto curly =
        std::ranges::find_if(curly_quotes, [&](std::string_view each) { return line.starts_with(each); });
    straight += curly == std::end(curly_quotes) ? line.front() : '"';
    line.remove_prefix(curly == std::end(curly_quotes) ? 1 : curly->size());
  }
  return straight;
}

/// A value that would be right between quotes: a length with its unit, or a word.
bool wants_quotes(std::string_view value) {
  const auto length = read_length(value, Units::mm);
  const auto* read = std::get_if<Length>(&length);
  if (read != nullptr) return read->unit.has_value() || read->fraction || read->per_minute;
  return !value.empty() &&
         value.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_") ==
             std::string_view::npos;
}

}  // namespace

std::optional<LineSlip> slip_in_line(std::string_view line) {
  line = line.substr(0, end_of_values(line));
  if (const std::size_t at = first_curly_quote(line); at != std::string_view::npos) {
    return LineSlip{column_of(line, at), "curly quotes stand here; a text stands in straight double quotes",
                    "write " + with_straight_quotes(trimmed(line))};
  }
  const std::size_t equals = line.find('=');
  if (equals == std::string_view::npos || trimmed(line.substr(0, equals)).empty()) return std::nullopt;
  const std::string_view value = trimmed(line.substr(equals + 1));
  if (!wants_quotes(value)) return std::nullopt;
  const auto start = static_cast<std::size_t>(value.data() - line.data());
  std::string escaped(value);
  if (escaped.ends_with('"')) escaped.replace(escaped.size() - 1, 1, " in");
  return LineSlip{column_of(line, start),
                  shown_text(value) + " stands here without quotes; what is not a bare number stands in double quotes",
                  "write " + std::string(trimmed(line.substr(0, equals))) + " = " + quoted(escaped)};
}

}  // namespace sagitta
