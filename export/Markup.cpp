#include "export/Markup.hpp"

namespace sagitta {

std::string escaped(const std::string& text) {
  std::string result;
  for (const char c : text) {
    if (c == '&')
      result += "&amp;";
    else if (c == '<')
      result += "&lt;";
    else if (c == '>')
      result += "&gt;";
    else if (c == '"')
      result += "&quot;";
    else
      result += static_cast<unsigned char>(c) < 0x20 || c == 0x7f ? ' ' : c;
  }
  return result;
}

}  // namespace sagitta
