#pragma once

/// The board in short, for the first page of the job sheet.

#include "jobsheet/JobTable.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// Rows of a name and what it is on this board.
JobTable board_facts(const PreparedBoard& ready);

}  // namespace sagitta
