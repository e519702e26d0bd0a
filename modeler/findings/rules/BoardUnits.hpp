#pragma once

/// A board told in other units than its file's.

#include "board/Board.hpp"

namespace sagitta {

/// The same board, whose lengths papers and messages tell in `units`. Limits that are lengths stay what they are.
Board told_in(Board board, Units units);

}  // namespace sagitta
