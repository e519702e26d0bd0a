#pragma once

/// What two boards differ by and what each difference does to the wood, as `sagitta compare` says it, worked out in the
/// background.

#include <string>
#include <vector>

#include "jobs/Model.hpp"
#include "jobs/NewestJob.hpp"
#include "package/Compare.hpp"

namespace sagitta::viewer {

/// From the first board to the second; both models are prepared. Equal when board and neck are.
struct BoardPair {
  ModelPtr from, to;
  friend bool operator==(const BoardPair& a, const BoardPair& b);
};

struct Compared {
  ModelPtr from, to;
  std::vector<KeyDifference> keys;
  Effect all;
  std::string trouble;  ///< why it could not be worked out
};

struct Comparing : NewestJob<BoardPair, Compared> {
  Comparing();
};

}  // namespace sagitta::viewer
