#pragma once

/// What is wrong with a board, with its place, its key and what to do.

#include <string>
#include <vector>

#include "board/FaultCode.hpp"
#include "board/FeatureId.hpp"

namespace sagitta {

/// Something wrong with a board file: where it is, what was found, what is allowed, what to do.
struct Problem {
  FaultCode code{};
  std::string file;
  int line = 1;         ///< 1-based
  int column = 1;       ///< 1-based, in code points
  std::string key;      ///< dotted, "inlays[2].depth"
  std::string message;  ///< what was found and what is allowed
  std::string hint;     ///< what to do; may be empty
  FeatureId where{};    ///< kind none: no part of the board
  friend bool operator==(const Problem&, const Problem&) = default;
};

/// A problem that a later step (layout, plan) found in a sound file: it names the key that causes it, not yet the line.
struct Fault {
  FaultCode code{};
  std::string key;
  std::string message;
  std::string hint;
  FeatureId where{};
  friend bool operator==(const Fault&, const Fault&) = default;
};
using Faults = std::vector<Fault>;

}  // namespace sagitta
