#pragma once

#include <vector>

#include "export/JobSheet.hpp"
#include "export/SetUp.hpp"

namespace sagitta {

/// The name of the stage that an operation leaves; empty for inlaying, which changes no wood.
std::string stage_after(Operation operation);

/// The set-up's operations in the order of work, with heights from its own zero.
std::vector<JobStep> job_steps(const PreparedBoard& ready, const SetUp& setup);

}  // namespace sagitta
