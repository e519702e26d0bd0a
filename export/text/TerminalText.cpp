#include "text/TerminalText.hpp"

#include <cstdio>

#include "text/ForeignText.hpp"

namespace sagitta {

std::string terminal_text(std::string_view text) {
  std::string result;
  while (!text.empty()) {
    const ForeignCharacter next = first_character(text);
    char written[16];
    const char* format = next.manner == Manner::malformed ? "\\x%02X" : next.code > 0xFFFF ? "\\U%08X" : "\\u%04X";
    if (next.manner == Manner::shown)
      result += text.substr(0, next.bytes);
    else
      result.append(written,
                    static_cast<std::size_t>(std::snprintf(written, sizeof written, format, unsigned{next.code})));
    text.remove_prefix(next.bytes);
  }
  return result;
}

}  // namespace sagitta
