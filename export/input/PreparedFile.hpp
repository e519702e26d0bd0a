#pragma once

/// From a board file to the prepared board, or to problems that say the line.

#include <string>
#include <variant>
#include <vector>

#include "board/BoardFile.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

using Problems = std::vector<Problem>;

/// Lays the board out, or says everything that keeps it from that.
std::variant<Drawn, Problems> draw(const BoardFile& file, Outside outside = Outside::refused);

/// Prepares the board and makes sure that its neck's file may be read from where it lies and that the plan of every
/// stage can be made, or says everything that keeps it from that. `outside`: whether drawings and the neck's file may
/// lie outside the board's folder.
std::variant<PreparedBoard, Problems> prepare(const BoardFile& file, Outside outside = Outside::refused);
/// Reads the file first; `outside` counts for its base too.
std::variant<PreparedBoard, Problems> prepare(const std::string& path, Outside outside = Outside::refused);

/// Empty when the board is prepared.
Problems problems_of(const std::variant<PreparedBoard, Problems>& prepared);

}  // namespace sagitta
