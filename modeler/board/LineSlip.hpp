#pragma once

/// Usual slips in a line of a board file that is no TOML.

#include <optional>
#include <string>
#include <string_view>

namespace sagitta {

struct LineSlip {
  int column = 1;  ///< 1-based, in code points
  std::string message;
  std::string hint;  ///< the line as it was probably meant
};

/// The slip in one line (without its line break), if it is one of: curly quotes; a length with its unit, or a word,
/// without quotes.
std::optional<LineSlip> slip_in_line(std::string_view line);

}  // namespace sagitta
