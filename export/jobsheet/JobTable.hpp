#pragma once

/// A table of the job sheet.

#include <string>
#include <vector>

namespace sagitta {

/// Rows below a line of headings; as many cells in each.
struct JobTable {
  std::vector<std::string> heads;
  std::vector<std::vector<std::string>> rows;
};

}  // namespace sagitta
