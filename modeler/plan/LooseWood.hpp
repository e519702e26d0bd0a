#pragma once

/// Cuts that leave wood with nothing to hold it, as faults.

#include "plan/Feature.hpp"

namespace sagitta {

/// A fault where a part of the wood is connected to no other, on the feature that frees it; none where all of it holds
/// together. Wood can only come loose between what is cut from above and what is bored from below or from the side, or
/// where a cut of the builder's own parts it. `features` are those of the plan, in its
/// order; places are told in `units`.
Faults loose_wood(const Plan& plan, const std::vector<Feature>& features, Units units);

}  // namespace sagitta
