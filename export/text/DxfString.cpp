#include "text/DxfString.hpp"

#include <cstdio>

#include "text/ForeignText.hpp"

namespace sagitta {
namespace {

std::string written(const ForeignCharacter& character) {
  if (character.manner == Manner::blank) return " ";
  if (character.manner != Manner::shown || character.code > 0xFFFF) return "?";
  if (character.code < 0x80 && character.code != '\\') return {static_cast<char>(character.code)};
  char code[16];
  std::snprintf(code, sizeof code, "\\U+%04X", unsigned{character.code});
  return code;
}

}  // namespace

std::string dxf_string(std::string_view utf8) {
  std::string result;
  while (!utf8.empty()) {
    const ForeignCharacter next = first_character(utf8);
    utf8.remove_prefix(next.bytes);
    const std::string one = written(next);
    if (result.size() + one.size() > longest_dxf_value) break;
    result += one;
  }
  return result;
}

}  // namespace sagitta
