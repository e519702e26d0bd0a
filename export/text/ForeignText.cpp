#include "text/ForeignText.hpp"

#include <algorithm>
#include <iterator>

#include "board/SourceText.hpp"

namespace sagitta {
namespace {

struct Range {
  char32_t first, last;
};

constexpr Range hidden[] = {
    {0x80, 0x9F},                                            // C1 controls: U+009B begins a terminal's command
    {0xAD, 0xAD},                                            // soft hyphen
    {0x61C, 0x61C},     {0x200E, 0x200F},                    // marks of direction
    {0x200B, 0x200B},   {0x2028, 0x2029},                    // no width; separators of lines and paragraphs
    {0x202A, 0x202E},   {0x2066, 0x2069},                    // embeddings, overrides, isolates
    {0x2060, 0x2065},   {0x206A, 0x206F},                    // word joiner, invisible operators, deprecated controls
    {0xFDD0, 0xFDEF},   {0xFEFF, 0xFEFF}, {0xFFF9, 0xFFFB},  // noncharacters, byte order mark, annotations
    {0xE0000, 0xE0FFF},                                      // tags
};

bool is_hidden(char32_t code) {
  if ((code & 0xFFFE) == 0xFFFE) return true;  // the last two of every plane
  return std::any_of(std::begin(hidden), std::end(hidden),
                     [code](const Range& range) { return range.first <= code && code <= range.last; });
}

}  // namespace

ForeignCharacter first_character(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const std::size_t length = utf8_length(text);
  if (length == 0) return {byte(0), 1, Manner::malformed};
  char32_t code = length == 1 ? byte(0) : byte(0) & (0x7FU >> length);
  for (std::size_t i = 1; i < length; ++i) code = code << 6 | (byte(i) & 0x3FU);
  if (code < 0x20 || code == 0x7F) return {code, length, Manner::blank};
  return {code, length, is_hidden(code) ? Manner::hidden : Manner::shown};
}

std::string visible_text(std::string_view text) {
  std::string result;
  while (!text.empty()) {
    const ForeignCharacter next = first_character(text);
    if (next.manner == Manner::shown)
      result += text.substr(0, next.bytes);
    else
      result += next.manner == Manner::blank ? " " : "\xEF\xBF\xBD";
    text.remove_prefix(next.bytes);
  }
  return result;
}

}  // namespace sagitta
