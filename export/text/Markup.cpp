#include "text/Markup.hpp"

#include "text/ForeignText.hpp"

namespace sagitta {
namespace {

/// Empty for a character that means nothing in markup.
std::string_view escape_of(char c) {
  switch (c) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    default:
      return "";
  }
}

}  // namespace

std::string markup_text(std::string_view text) {
  std::string result;
  for (const char c : visible_text(text)) {
    const std::string_view escape = escape_of(c);
    escape.empty() ? result.append(1, c) : result.append(escape);
  }
  return result;
}

}  // namespace sagitta
