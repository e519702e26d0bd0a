#pragma once

/// The ways out of what was measured, looked for in the background.

#include <string>
#include <vector>

#include "board/Board.hpp"
#include "jobs/NewestJob.hpp"
#include "rescue/Way.hpp"

namespace sagitta::viewer {

/// What was found for one board.
struct FoundWays {
  Board board;
  std::vector<Way> ways;  ///< best first
  std::string trouble;    ///< why they could not be looked for
};

struct WaysOut : NewestJob<Board, FoundWays> {
  WaysOut();
};

}  // namespace sagitta::viewer
