#pragma once

/// A height of the wood, as a diagram of levels shows it.

#include <string>

namespace sagitta {

/// In a list of them the lowest comes first.
struct JobLevel {
  std::string what, z;  ///< "z = 6.5" in the set-up's own zero, or "height 6.5" above the glue face
  bool zero = false;    ///< z = 0 is set here
  std::string
      above;  ///< what lies between it and the next: "tape", "board", "comes off", or how much; empty at the top
  friend bool operator==(const JobLevel&, const JobLevel&) = default;
};

}  // namespace sagitta
