#pragma once

/// The job sheet: what is done at the machine, set-up by set-up, what is measured, and what to look out for. One value
/// that HTML and PDF are both made from; texts are in the board's own units.

#include <string>
#include <utility>
#include <vector>

#include "jobsheet/JobLevel.hpp"
#include "jobsheet/JobSteps.hpp"
#include "jobsheet/JobTable.hpp"
#include "jobsheet/Walk.hpp"
#include "paper/HoldDown.hpp"
#include "prepared/PreparedBoard.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

struct JobSetup {
  std::string title, folder;  ///< folder below setups/
  std::vector<std::string> notes;
  HoldDown hold_down;  ///< blank, zero, centre lines, clamps, what is cut
  std::vector<JobLevel> levels;
  std::vector<JobStep> steps;  ///< in the order of work
};

struct JobSheet {
  std::string title, units;
  std::string picture;   ///< the stage that the first page shows
  JobTable facts;        ///< the board in short
  JobTable tools;        ///< cutters in the order in which they are put in
  JobTable clock;        ///< time of cutting; no rows where no cutter gives a feed
  std::string no_clock;  ///< what to do to get one; empty where there is one
  JobTable material;     ///< what is used, and what is left over
  std::vector<WalkStep> walk;
  std::vector<JobSetup> setups;
  JobTable checks;  ///< by caliper
  JobTable pieces, sheets, wire;
  JobTable lines;                     ///< strips of veneer let in as lines
  std::vector<std::string> no_room;   ///< pieces that none of the board's sheets has room for
  std::vector<std::string> findings;  ///< those that stand at no step
  std::vector<std::string> cautions;
  std::vector<std::string> notes;  ///< of the people who make it
  std::vector<std::string> done;   ///< operations that are cut already: no set-up has them any more
  JobTable record;                 ///< what was measured beside what was planned
};

/// Whether the step shows the wire's or the lines' table; where no step does, they stand at the end.
bool shows_wire(const WalkStep& step);
bool shows_lines(const WalkStep& step);

JobSheet job_sheet(const PreparedBoard& ready, const std::vector<Finding>& findings);

}  // namespace sagitta
