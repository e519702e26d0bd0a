#pragma once

/// What the job sheet keeps of a board that is being made: what was measured, what is cut, what was noted.

#include "jobsheet/JobSheet.hpp"

namespace sagitta {

/// A row for each measured value: what, where, as planned, measured, how far it is off, how far it may be off. No rows
/// where nothing was measured.
JobTable record_of(const PreparedBoard& ready);

/// [[notes]], a sentence each, with the finding that it belongs to and who wrote it.
std::vector<std::string> notes_of(const Board& board);

/// Whether measured.done names the operation: the sheet of the rest leaves it out.
bool is_done(const Board& board, Operation operation);

}  // namespace sagitta
