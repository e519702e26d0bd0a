#pragma once

/// Findings about cuts that only touch each other.

#include <vector>

#include "prepared/PreparedBoard.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// The cuts that only touch something and were drawn back in the plans, as findings called "touching" of severity note;
/// each once, whatever the number of stages. Nothing is said of a pocket that cuts no wood at any stage.
std::vector<Finding> touching_findings(const PreparedBoard& ready);

}  // namespace sagitta
