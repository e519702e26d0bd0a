#pragma once

/// The numbers that an operation is cut with.

#include <string>
#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// One number that is set or programmed for a cut; mm, heights from the zero of the set-up that does it.
struct CutNumber {
  std::string what;  ///< "slot width", "floor of the pocket of shell-01, z"
  double value = 0;
};

/// Every number of the operation, each name once: heights of zero, wood and floors, widths, depths, piece thickness.
std::vector<CutNumber> cut_numbers(const PreparedBoard& ready, Operation operation);

}  // namespace sagitta
