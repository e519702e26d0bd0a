#pragma once

/// Numbers and words out of attribute texts: never dependent on the system's language.

#include <optional>
#include <string_view>

namespace sagitta {

/// A walk through a text. White space is that of XML: space, tab, line feed, carriage return.
struct Scan {
  std::string_view text;
  std::size_t at = 0;

  bool done() const { return at >= text.size(); }
  char here() const { return done() ? '\0' : text[at]; }
  std::string_view rest() const { return text.substr(at); }
  void skip_space();
  /// White space, at most one comma, white space.
  void skip_comma();
  bool take(char c);
  /// A number of SVG 1.1: sign, digits with or without a dot, exponent. Nothing (and no step) when none begins here or
  /// when it is beyond 1e12.
  std::optional<double> number();
  /// "0" or "1", as the flags of an arc are: they need nothing between them and what follows.
  std::optional<bool> flag();
  /// Letters, digits, "-" and "_".
  std::string_view word();
};

inline bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f'; }
std::string_view trimmed(std::string_view text);

}  // namespace sagitta
