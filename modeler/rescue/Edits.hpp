#pragma once

/// Changes of a board file: keys, and what they are set to.

#include <string>
#include <vector>

#include "board/Access.hpp"
#include "board/Board.hpp"

namespace sagitta {

/// One key set to a value. Lengths in mm whatever the file's units; a choice is an int, its place in the field's list.
struct Edit {
  std::string key;  ///< dotted, with indices from 0: "inlays[2].depth"; an index one past the last row makes a row
  Value value;
  friend bool operator==(const Edit&, const Edit&) = default;
};
using Edits = std::vector<Edit>;

/// The board with the edits made, one after the other; edits of keys that there are none of are left out.
Board edited(Board board, const Edits& edits);

/// What makes the second board of the first: every key of a table or of a list's rows that differs. Both have the same
/// rows.
Edits edits_between(const Board& from, const Board& to);

/// Edits that add a row to the list of inlays: all that this inlay says.
Edits new_inlay(const Board& board, const Inlay& inlay);

/// "inlays[2].depth".
std::string inlay_key(std::size_t index, std::string_view key);

}  // namespace sagitta
