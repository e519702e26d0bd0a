#pragma once

/// The rule of a finding: what it measures, its limit and where the limit comes from.

#include <string_view>

#include "rules/Finding.hpp"

namespace sagitta {

/// Which side of the limit is good.
enum class Bar {
  least,  ///< the limit itself is good
  above,  ///< the limit itself is not: of a hole 0 mm deep nothing is left
  most    ///< the limit itself is good
};

inline constexpr std::string_view practice = "common practice, no source";

/// What a finding measures and where its limit lies.
struct Rule {
  std::string_view name;
  Severity severity;
  Bar bar;
  double limit;  ///< a length in mm; a board may give another in [limits]
  std::string_view unit;
  std::string_view measures;  ///< what the value is
  std::string_view source;    ///< of the limit: "key X", `practice`, or "published: .."
  std::string_view cost;      ///< what ignoring it costs
};

}  // namespace sagitta
