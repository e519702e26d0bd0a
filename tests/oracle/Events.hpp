#pragma once

#include <vector>

#include "oracle/Section.hpp"

namespace sagitta::oracle {

/// Every x, rising, from one end of the outline to the other, where the section area is not smooth: ends of strands,
/// meetings of strands, the line where the fall begins, tips of crossing curves and their meetings with strands.
std::vector<double> events(const Sections& sections);

}  // namespace sagitta::oracle
