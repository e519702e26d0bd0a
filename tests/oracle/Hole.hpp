#pragma once

#include "oracle/Section.hpp"

namespace sagitta::oracle {

/// Volume that hole `index` of the work takes from the wood that the cuts, pins and earlier holes leave, mm^3.
double hole_volume(const Work& work, const Sections& sections, std::size_t index);

}  // namespace sagitta::oracle
