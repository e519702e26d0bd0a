#pragma once

/// The whole way from a board to a shell in one call, for tests.

#include <variant>

#include "board/Board.hpp"
#include "lift/Shell.hpp"

namespace sagitta::made {

/// Layout, surface, plan and lift; or the faults of the first step that finds any.
std::variant<Shell, Faults> shell_of(const Board& board, Stage stage);

/// Number of faces when walls of one cylinder that share an edge count once: a round wall is two half turns in the
/// shell.
int face_count(const Shell& shell);

/// The faults in words, a line each.
std::string told(const Faults& faults);

}  // namespace sagitta::made
