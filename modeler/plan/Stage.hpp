#pragma once

/// The stages of the work.

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "board/Board.hpp"

namespace sagitta {

/// The stock after each cut, in the usual order of work.
enum class Stage { blank, thicknessed, pocketed, radiused, slotted, board, finished };
inline constexpr std::size_t stage_count = 7;

/// "blank", "pocketed", ... as in file names and on the command line.
std::string_view name(Stage stage);
std::optional<Stage> stage_named(std::string_view name);
/// Whether the long edges are rolled or bevelled.
bool works_edges(const Board& board);
/// The stages that this board goes through: `thicknessed` only when the blank is brought to thickness first, `finished`
/// only when sanding takes something or an edge is worked by hand.
std::vector<Stage> stages_of(const Board& board);

}  // namespace sagitta
