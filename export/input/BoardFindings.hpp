#pragma once

#include <vector>

#include "prepared/PreparedBoard.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// Everything that `sagitta check` finds on the board: the findings, with its neck's STEP file read when it names one,
/// and the cuts that only touch.
std::vector<Finding> board_findings(const PreparedBoard& ready);

}  // namespace sagitta
