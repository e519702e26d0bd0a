#pragma once

#include <string>
#include <vector>

namespace sagitta {

/// Something wrong with a board file: where it is, what was found, what is allowed, what to do.
struct Problem {
  std::string file;
  int line = 1;         ///< 1-based
  int column = 1;       ///< 1-based, in code points
  std::string key;      ///< dotted, "inlays[2].depth"
  std::string message;  ///< what was found and what is allowed
  std::string hint;     ///< what to do; may be empty
  friend bool operator==(const Problem&, const Problem&) = default;
};

/// A problem that a later step (layout, plan) found in a sound file: it names the key that causes it, not yet the line.
struct Fault {
  std::string key;
  std::string message;
  std::string hint;
  friend bool operator==(const Fault&, const Fault&) = default;
};
using Faults = std::vector<Fault>;

}  // namespace sagitta
