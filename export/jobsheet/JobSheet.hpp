#pragma once

/// The job sheet: what is done at the machine, set-up by set-up, what is measured, and what to look out for. One value
/// that HTML and PDF are both made from; texts are in the board's own units.

#include <string>
#include <utility>
#include <vector>

#include "jobsheet/JobSteps.hpp"
#include "paper/HoldDown.hpp"
#include "prepared/PreparedBoard.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// Rows below a line of headings; as many cells in each.
struct JobTable {
  std::vector<std::string> heads;
  std::vector<std::vector<std::string>> rows;
};

/// A level of the wood on the machine, from below: bed, glue face, finished top, blank's top.
struct JobLevel {
  std::string what, z;  ///< z as it reads in the set-up's own zero
  bool zero = false;    ///< z = 0 is set here
  std::string above;    ///< what lies between it and the next: "tape", "board", "comes off"; empty at the top
};

struct JobSetup {
  std::string title, folder;  ///< folder below setups/
  std::vector<std::string> notes;
  HoldDown hold_down;  ///< blank, zero, centre lines, clamps, what is cut
  std::vector<JobLevel> levels;
  std::vector<JobStep> steps;  ///< in the order of work
};

struct JobSheet {
  std::string title, units;
  std::vector<JobSetup> setups;
  JobTable checks;  ///< by caliper
  JobTable pieces, sheets, wire;
  JobTable lines;                    ///< strips of veneer let in as lines
  std::vector<std::string> no_room;  ///< pieces that none of the board's sheets has room for
  std::vector<std::string> findings, cautions;
  std::vector<std::string> notes;  ///< of the people who make it
  std::vector<std::string> done;   ///< operations that are cut already: no set-up has them any more
  JobTable record;                 ///< what was measured beside what was planned
};

JobSheet job_sheet(const PreparedBoard& ready, const std::vector<Finding>& findings);

/// Where a fret's slot may lie off, and how far a thickness may be off, when it is measured by caliper. mm. Slots: "a
/// few thousandths" of an inch, not accumulating (common practice, no source); thickness: common practice, no source.
inline constexpr double slot_tolerance = 0.08, thickness_tolerance = 0.1;

}  // namespace sagitta
