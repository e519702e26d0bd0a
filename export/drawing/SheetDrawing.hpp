#pragma once

/// A sheet of inlay material as a job of its own: the pieces as they lie on it, in the zero that the board asks for.

#include <string>
#include <vector>

#include "board/Board.hpp"
#include "drawing/Drawing.hpp"
#include "inlay/Nesting.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// The sheet's folder below setups/: "sheet-shell-01".
std::string sheet_folder(const NestedSheet& sheet);

/// What the machine's operator must know of a sheet, a sentence each, with lengths in `units`: size, zero, how it is
/// held, which side is up, what to do where the sheet is thicker than the pieces.
std::vector<std::string> sheet_notes(const PreparedBoard& ready, const NestedSheet& sheet, Units units);

/// The pieces, the sheet with its centre lines, the clamps' zones and a cross at the zero. A sheet that lies with its
/// face down is drawn mirrored, as it is seen from above then.
Drawing sheet_drawing(const PreparedBoard& ready, const NestedSheet& sheet);

}  // namespace sagitta
