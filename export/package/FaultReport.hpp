#pragma once

/// What is kept for a report when a result of the program is not sound.

#include <filesystem>
#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

#include "board/Board.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// A fault of the program, told to the builder: what() says what is not sound and where, that nothing was written, and
/// in which folder the board was kept for a report.
struct ProgramFault : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// Runs `write`. When a result of it is not sound (Unsound, BuildError, CellOrderError), the board is kept for a
/// report: in a new folder beside `target`, "NAME-fault", or "NAME-fault-2" and on where that is taken, with fault.txt,
/// which says what was found, copies of the board's drawings and of its neck's file, and manifest.json, from which the
/// same export can be run again. `findings`: the board's; `options`: JSON text, how the folder was to be made. Throws
/// ProgramFault then; lets everything else pass.
void keep_on_fault(const Board& board, const std::vector<Finding>& findings, const std::string& options,
                   const std::filesystem::path& target, const std::function<void()>& write);

}  // namespace sagitta
