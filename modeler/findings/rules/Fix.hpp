#pragma once

/// Suggestions that can be applied to a board.

#include <string>

#include "board/Board.hpp"

namespace sagitta {

/// A suggestion with a number: one key of the board file and what to set it to.
struct Fix {
  std::string key;   ///< dotted, with indices from 0, as in the field table: "slots.depth", "inlays[2].depth"
  double value = 0;  ///< a length in mm whatever the file's units; else in the key's own unit
  friend bool operator==(const Fix&, const Fix&) = default;
};

/// Whether the key exists on this board, holds a number, and allows the value.
bool can_apply(const Board& board, const Fix& fix);

/// The board with the fix applied; unchanged where it cannot be.
Board apply(Board board, const Fix& fix);

}  // namespace sagitta
