#pragma once

/// The operations of a set-up as steps of the job sheet, with their depths, cutters and check boxes.

#include <string>
#include <utility>
#include <vector>

#include "drawing/ResolvedSetup.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// One operation of a set-up.
struct JobStep {
  std::string title;                                       ///< "pockets"
  std::vector<std::pair<std::string, std::string>> facts;  ///< what and how: "cutter", "depth", "time"
  std::string before, after;                               ///< stages to be shown; empty: there is no picture
  std::vector<std::string> ticks;                          ///< a box each, in the order along the board
};

/// The name of the stage that an operation leaves; empty for inlaying, which changes no wood.
std::string stage_after(Operation operation);

/// The set-up's operations in the order of work, with heights from its own zero.
std::vector<JobStep> job_steps(const PreparedBoard& ready, const ResolvedSetup& setup);

}  // namespace sagitta
