#include "text/StepString.hpp"

#include <cstdio>

#include "text/ForeignText.hpp"

namespace sagitta {
namespace {

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
    const ForeignCharacter next = first_character(utf8);
    utf8.remove_prefix(next.bytes);
    if (next.manner == Manner::blank)
      text += ' ';
    else if (next.manner != Manner::shown)
      text += '?';
    else if (next.code > 0x7F)
      text += escaped(next.code);
    else
      text.append(next.code == '\'' || next.code == '\\' ? 2 : 1, static_cast<char>(next.code));
  }
  return text;
}

}  // namespace sagitta
