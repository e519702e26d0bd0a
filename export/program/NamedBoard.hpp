#pragma once

/// A board as the command line names it: a file, or "-" for the text on standard input.

#include <string>

#include "board/BoardFile.hpp"
#include "board/InputPath.hpp"

namespace sagitta {

inline constexpr const char* standard_input = "-";

/// Reads the board file of this name, or the text on standard input, whose relative paths start from the folder that
/// the program was started in. A text of more than largest_file bytes is a problem.
BoardFile read_named_board(const std::string& name, Outside outside = Outside::refused);

/// The text that is edited when the board changes: of standard input as it was read, of a file as it is now; empty when
/// it cannot be read.
std::string text_of_board(const std::string& name);

}  // namespace sagitta
