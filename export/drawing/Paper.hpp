#pragma once

/// The sheets of paper that drawings are printed on.

#include <string_view>

namespace sagitta {

/// A sheet of paper, mm.
struct Paper {
  std::string_view name;
  double width = 0, height = 0;  ///< lying: the longer side is the width
};

/// A4, A3 (ISO 216), Letter (8.5 x 11 in), Tabloid (11 x 17 in).
const Paper* paper_named(std::string_view name);
inline constexpr const char* paper_list = "A4, A3, Letter and Tabloid";

}  // namespace sagitta
