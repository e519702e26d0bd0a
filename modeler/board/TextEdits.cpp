#include "board/TextEdits.hpp"

#include <algorithm>

#include "board/SourceText.hpp"

namespace sagitta {
namespace {

/// Behind the string that begins here.
std::size_t string_end(std::string_view text, std::size_t at) {
  const char quote = text[at];
  const std::string triple(3, quote);
  const bool many_lines = text.substr(at).starts_with(triple);
  const std::string_view closing = many_lines ? std::string_view(triple) : std::string_view(triple).substr(0, 1);
  at += closing.size();
  while (at < text.size() && !text.substr(at).starts_with(closing)) at += quote == '"' && text[at] == '\\' ? 2 : 1;
  at = std::min(at + closing.size(), text.size());
  while (many_lines && at < text.size() && text[at] == quote) ++at;
  return at;
}

/// Behind the bracket that closes the one here.
std::size_t bracket_end(std::string_view text, std::size_t at) {
  int depth = 0;
  while (at < text.size()) {
    const char c = text[at];
    if (c == '"' || c == '\'') {
      at = string_end(text, at);
      continue;
    }
    if (c == '#') {
      at = std::min(text.find('\n', at), text.size());
      continue;
    }
    if (c == '[' || c == '{') ++depth;
    if (c == ']' || c == '}') --depth;
    ++at;
    if (depth == 0) break;
  }
  return at;
}

}  // namespace

TextEdits::TextEdits(std::string_view text) : text_(text), lines_{0} {
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\n') lines_.push_back(i + 1);
  }
}

std::size_t TextEdits::offset(TextPosition spot) const {
  const auto line = static_cast<std::size_t>(std::max(spot.line, 1)) - 1;
  if (line >= lines_.size()) return text_.size();
  std::size_t at = lines_[line];
  for (int column = 1; column < spot.column && at < text_.size(); ++column)
    at += std::max<std::size_t>(utf8_length(text_.substr(at)), 1);
  return at;
}

char TextEdits::at(TextPosition spot) const {
  const std::size_t place = offset(spot);
  return place < text_.size() ? text_[place] : '\0';
}

std::size_t TextEdits::line_start(TextPosition spot) const {
  return lines_[std::min(static_cast<std::size_t>(std::max(spot.line, 1)) - 1, lines_.size() - 1)];
}

std::size_t TextEdits::line_end(std::size_t offset) const {
  const std::size_t end = text_.find('\n', offset);
  return end == std::string_view::npos ? text_.size() : end + 1;
}

std::size_t TextEdits::value_end(TextPosition spot) const {
  const std::size_t start = offset(spot);
  if (start >= text_.size()) return text_.size();
  const char c = text_[start];
  if (c == '"' || c == '\'') return string_end(text_, start);
  if (c == '[' || c == '{') return bracket_end(text_, start);
  return std::min(text_.find_first_of(",]}# \t\r\n", start), text_.size());
}

void TextEdits::replace_value(TextPosition spot, std::string value) {
  changes_.push_back({offset(spot), value_end(spot), std::move(value)});
}

void TextEdits::remove_lines(std::size_t from, std::size_t to) { changes_.push_back({from, to, ""}); }

void TextEdits::insert(std::size_t offset, std::string lines) {
  if (offset > 0 && text_[offset - 1] != '\n') lines.insert(0, "\n");
  changes_.push_back({offset, offset, std::move(lines)});
}

void TextEdits::append(std::string lines) { tail_ += "\n" + lines; }

std::string TextEdits::applied() const {
  auto changes = changes_;
  std::ranges::stable_sort(changes, {}, &Change::from);
  std::string result;
  std::size_t at = 0;
  for (const Change& change : changes) {
    if (change.from < at) continue;
    result += text_.substr(at, change.from - at);
    result += change.text;
    at = change.to;
  }
  result += text_.substr(at);
  if (!tail_.empty() && !result.empty() && result.back() != '\n') result += '\n';
  return result + tail_;
}

}  // namespace sagitta
