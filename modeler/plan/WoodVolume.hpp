#pragma once

/// The volume of the wood of a plan.

#include "plan/Plan.hpp"

namespace sagitta {

/// Volume of the wood of a plan, mm^3, without any solid: the heights of each cell integrated over it as line integrals
/// along its edges (Green's theorem), in closed form across and by Romberg's rule along; to about 1e-10 of it.
double wood_volume(const Plan& plan);

}  // namespace sagitta
