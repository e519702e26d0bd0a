#include "export/StepString.hpp"

#include <cstdint>
#include <cstdio>

namespace sagitta {
namespace {

/// Takes the first character off `text`; '?' for a byte that begins none.
char32_t take(std::string_view& text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(0);
  const std::size_t size = first < 0x80 ? 1 : first >= 0xf0 ? 4 : first >= 0xe0 ? 3 : 2;
  bool whole = first < 0x80 || (first >= 0xc2 && first <= 0xf4 && text.size() >= size);
  char32_t character = size == 1 ? first : first & (0x7fU >> size);
  for (std::size_t i = 1; whole && i < size; ++i) {
    whole = (byte(i) & 0xc0) == 0x80;
    character = (character << 6) | (byte(i) & 0x3fU);
  }
  text.remove_prefix(whole ? size : 1);
  return whole ? character : U'?';
}

std::string escaped(char32_t character) {
  char buffer[24];
  const char* format = character < 0x10000 ? "\\X2\\%04X\\X0\\" : "\\X4\\%08X\\X0\\";
  std::snprintf(buffer, sizeof buffer, format, static_cast<unsigned>(character));
  return buffer;
}

}  // namespace

std::string step_string(std::string_view utf8) {
  std::string text;
  while (!utf8.empty()) {
    const char32_t character = take(utf8);
    if (character >= 0x7f)
      text += escaped(character);
    else if (character < ' ')
      text += ' ';
    else
      text.append(character == '\'' || character == '\\' ? 2 : 1, static_cast<char>(character));
  }
  return text;
}

}  // namespace sagitta
