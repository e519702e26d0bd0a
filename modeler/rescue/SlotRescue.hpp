#pragma once

/// Slots that lie elsewhere than planned: the scale that they fit.

#include <vector>

#include "measured/LeastSquares.hpp"

namespace sagitta {

/// The places where slots were measured as planned places stretched and shifted: measured = shift + stretch planned.
struct OtherScale {
  double stretch = 1, shift = 0;
};

/// The stretch and the shift of the least sum of squares. `samples`: planned x, measured x; at least two of them.
OtherScale other_scale(const std::vector<Sample>& samples);
/// The stretch alone, with the nut where it was planned: the least sum of squares of measured - stretch planned.
OtherScale other_scale_at_nut(const std::vector<Sample>& samples);

}  // namespace sagitta
