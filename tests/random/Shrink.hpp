#pragma once

#include <functional>
#include <string>

#include "board/Board.hpp"

namespace sagitta::random_boards {

/// The smallest board found that still fails: features are dropped and numbers rounded one at a time, for as long as
/// `still_fails` says so. `still_fails` is asked about sound boards only.
Board shrink(Board board, const std::function<bool(const Board&)>& still_fails);

/// Writes the board into the folder that SAGITTA_REGRESSIONS names, as NAME.toml; does nothing when it is not set.
void keep(const Board& board, const std::string& name);

}  // namespace sagitta::random_boards
