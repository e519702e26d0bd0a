#pragma once

/// Changed values written into a board file that a person wrote, everything else left as it is.

#include <string>
#include <string_view>

#include "board/Board.hpp"

namespace sagitta {

/// A hand-written board file with what changed between two Boards written into it. Only the values that changed are
/// touched: comments, order, spelling and the builder's own units stay, fractions too where the new length is one. New
/// keys go to the end of their table, keys that were given and used and are no longer lose their lines, entries of
/// lists of tables come and go. `old_text` must read as `old_board`. The result, tidied, reads as tidy(new_board);
/// where no edit in place can do that (keys to add to a table in braces, keys of a base to take away), the board is
/// written afresh as by write_board.
std::string edit_text(std::string_view old_text, const Board& old_board, const Board& new_board);

}  // namespace sagitta
