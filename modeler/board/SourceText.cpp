#include "board/SourceText.hpp"

#include <array>
#include <optional>

#include "files/ReadFile.hpp"

namespace sagitta {
namespace {

/// A walk over the text that knows the line and column of where it stands.
struct Walk {
  std::string_view text;
  std::size_t at = 0;
  int line = 1;
  int column = 1;

  bool done() const { return at >= text.size(); }
  char here() const { return text[at]; }
  void step(std::size_t bytes) {
    if (here() == '\n') {
      ++line;
      column = 1;
    } else {
      ++column;
    }
    at += bytes;
  }
};

Problem problem_at(FaultCode code, const Walk& walk, const std::string& file, std::string message, std::string hint) {
  return {code, file, walk.line, walk.column, "", std::move(message), std::move(hint)};
}

std::optional<Problem> odd_beginning(std::string_view text, const std::string& file) {
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
    return Problem{
        FaultCode::not_text, file, 1, 1, "", "the file is in UTF-16, not in UTF-8", "save it as plain text in UTF-8"};
  }
  return std::nullopt;
}

std::string hexadecimal(unsigned char byte) {
  constexpr std::string_view digits = "0123456789ABCDEF";
  return {digits[byte >> 4], digits[byte & 15]};
}

std::optional<Problem> odd_character(std::string_view text, const std::string& file) {
  Walk walk{text};
  while (!walk.done()) {
    const auto byte = static_cast<unsigned char>(walk.here());
    const std::size_t bytes = utf8_length(text.substr(walk.at));
    if (bytes == 0) {
      return problem_at(FaultCode::not_text, walk, file, "the byte " + hexadecimal(byte) + " here is not UTF-8 text",
                        "save the file as plain text in UTF-8");
    }
    const bool control = (byte < 0x20 && byte != '\t' && byte != '\n' && byte != '\r') || byte == 0x7F;
    if (control) {
      return problem_at(FaultCode::not_text, walk, file,
                        "the control character " + hexadecimal(byte) + " does not belong in a board file",
                        "a board file is plain text; delete the character, or check that this is the right file");
    }
    walk.step(bytes);
  }
  return std::nullopt;
}

/// Steps over the string or comment that begins here.
void step_over_quoted(Walk& walk) {
  const char quote = walk.here();
  if (quote == '#') {
    while (!walk.done() && walk.here() != '\n') walk.step(1);
    return;
  }
  const std::string triple(3, quote);
  const bool many_lines = walk.text.substr(walk.at).starts_with(triple);
  for (int i = 0; i < (many_lines ? 3 : 1); ++i) walk.step(1);
  while (!walk.done()) {
    if (many_lines && walk.text.substr(walk.at).starts_with(triple)) {
      for (int i = 0; i < 3; ++i) walk.step(1);
      return;
    }
    if (!many_lines && (walk.here() == quote || walk.here() == '\n')) {
      if (walk.here() == quote) walk.step(1);
      return;
    }
    if (quote == '"' && walk.here() == '\\' && walk.at + 1 < walk.text.size()) walk.step(1);
    walk.step(1);
  }
}

/// A run outside strings with more dots than a key may have. Values have one dot each, so any such run is a key or
/// junk.
std::optional<Problem> long_key(std::string_view text, const std::string& file) {
  Walk walk{text};
  Walk start = walk;
  int dots = 0;
  while (!walk.done()) {
    const char c = walk.here();
    if (c == '"' || c == '\'' || c == '#') {
      step_over_quoted(walk);
      continue;
    }
    const bool ends = c == '\n' || c == '=' || c == ',' || c == '[' || c == ']' || c == '{' || c == '}';
    if (c == '.' && ++dots > most_dots) {
      return problem_at(FaultCode::too_many, start, file, "a key here has more than 32 dots",
                        "keys have at most three parts: materials.ebony.colour");
    }
    walk.step(1);
    if (ends) {
      dots = 0;
      start = walk;
    }
  }
  return std::nullopt;
}

Problem too_large(const std::string& file) {
  return {FaultCode::too_many,
          file,
          1,
          1,
          "",
          "the file is larger than 1 MiB, which no board file is",
          "check that this is the right file"};
}

}  // namespace

std::size_t utf8_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
  const unsigned first = byte(0);
  if (first < 0x80) return text.empty() ? 0 : 1;
  std::size_t length = 0;
  unsigned low = 0x80, high = 0xBF;
  if (first >= 0xC2 && first <= 0xDF) length = 2;
  if (first >= 0xE0 && first <= 0xEF) length = 3;
  if (first >= 0xF0 && first <= 0xF4) length = 4;
  if (first == 0xE0) low = 0xA0;
  if (first == 0xED) high = 0x9F;
  if (first == 0xF0) low = 0x90;
  if (first == 0xF4) high = 0x8F;
  if (length == 0 || byte(1) < low || byte(1) > high) return 0;
  for (std::size_t i = 2; i < length; ++i) {
    if (byte(i) < 0x80 || byte(i) > 0xBF) return 0;
  }
  return length;
}

std::variant<std::string, Problem> fetch_text(const std::string& path, const std::string& shown_name) {
  const auto failed = [&](FaultCode code, std::string message, std::string hint) {
    return Problem{code, shown_name, 1, 1, "", std::move(message), std::move(hint)};
  };
  auto read = read_file(path, largest_file);
  if (auto* text = std::get_if<std::string>(&read)) return std::move(*text);
  switch (std::get<ReadFailure>(read).kind) {
    case Unreadable::missing:
      return failed(FaultCode::no_such_file, "there is no file of this name", "check the name and the folder");
    case Unreadable::folder:
      return failed(FaultCode::is_folder, "this is a folder, not a board file", "name the .toml file inside it");
    case Unreadable::special:
      return failed(FaultCode::no_plain_file, "this is not a file that can be read", "name a .toml file");
    case Unreadable::forbidden:
      return failed(FaultCode::forbidden, "the file cannot be opened for reading", "check who may read it");
    case Unreadable::too_large:
      return too_large(shown_name);
    case Unreadable::failed:
      break;
  }
  return failed(FaultCode::unreadable, "the file cannot be read to its end", "check the disk or copy the file again");
}

std::string_view without_byte_order_mark(std::string_view text) {
  constexpr std::string_view mark = "\xEF\xBB\xBF";
  return text.starts_with(mark) ? text.substr(mark.size()) : text;
}

std::optional<Problem> look_over(std::string_view text, const std::string& shown_name) {
  if (text.size() > largest_file) return too_large(shown_name);
  if (const auto problem = odd_beginning(text, shown_name)) return problem;
  if (const auto problem = odd_character(text, shown_name)) return problem;
  if (const auto problem = long_key(text, shown_name)) return problem;
  return std::nullopt;
}

}  // namespace sagitta
