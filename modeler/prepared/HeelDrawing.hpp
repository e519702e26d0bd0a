#pragma once

/// The drawing of a heel end read from its file.

#include <variant>

#include "artwork/ReadArtwork.hpp"
#include "board/InputPath.hpp"
#include "layout/DrawnEnd.hpp"
#include "prepared/Drawn.hpp"

namespace sagitta {

/// The line of board.heel_file, whose folder is the board's. Faults carry the key.
std::variant<DrawnEnd, Faults> read_heel_drawing(const Board& board, Outside outside);

/// The line as lines and arcs: each Bezier curve becomes arcs with its tangents, within half of tolerance::snap of it.
Loop as_lines_and_arcs(const OpenLine& line);

/// As draw(planned), which refuses a drawing that lies outside the board's folder.
std::variant<Drawn, Faults> draw(Board planned, Outside outside);

}  // namespace sagitta
