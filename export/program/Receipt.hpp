#pragma once

/// The last lines that a command prints when it has made a folder.

#include <string>
#include <vector>

#include "rules/Finding.hpp"

namespace sagitta {

/// What a command that makes a folder says when it is done: on standard output the folder, how many files are in it and
/// how many findings say stop and look ("my-board: 46 files, 1 stop, 2 looks"); on the error output those findings.
void print_receipt(const std::string& folder, std::size_t files, const std::vector<Finding>& findings);

/// Whether a finding says stop. Those that do are then listed on the error output, and that nothing was written.
bool refused_for_stops(const std::vector<Finding>& findings);

}  // namespace sagitta
