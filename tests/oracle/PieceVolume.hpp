#pragma once

/// Volume of a piece of inlay in the finished board by quadrature.

#include "oracle/Quadrature.hpp"

namespace sagitta::oracle {

/// Volume of the work's wood over the region and between the heights `low` and `high`, side holes taken out, mm^3. The
/// region is convex.
Volume volume_within(const Work& work, const Loop& region, double low, double high);

}  // namespace sagitta::oracle
