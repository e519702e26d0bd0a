#pragma once

/// What the background is to make: a board, and the stage of it that is shown.

#include <cstdint>

#include "board/Board.hpp"
#include "plan/Stage.hpp"

namespace sagitta::viewer {

struct Order {
  std::uint64_t generation = 0;
  Board board;
  Stage stage = Stage::board;  ///< the stage that is shown: made first
  bool moving = false;         ///< a hand is still dragging: the first part only
  std::uint64_t reading = 0;   ///< grows when a drawing was changed on the disk: all are read again
};

}  // namespace sagitta::viewer
