#pragma once

/// All findings of a board file, those included that need its neck's STEP file.

#include <vector>

#include "prepared/PreparedBoard.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// Everything that `sagitta check` finds on the board: the findings, with its neck's STEP file read when it names one,
/// and the cuts that only touch.
std::vector<Finding> board_findings(const PreparedBoard& ready);

}  // namespace sagitta
