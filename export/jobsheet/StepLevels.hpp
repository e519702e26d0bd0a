#pragma once

/// The heights that a step of the walk is about, on the centre line.

#include <vector>

#include "drawing/ResolvedSetup.hpp"
#include "jobsheet/Walk.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// From the glue face up: floors that the step cuts, the pieces' tops, the top that the wood has when the step begins,
/// the finished top. Empty for a step that changes no height. In the set-up's own zero; above the glue face without
/// one. Heights within 1e-9 mm are one level.
std::vector<JobLevel> step_levels(const PreparedBoard& ready, const ResolvedSetup* setup, WalkKind kind);

}  // namespace sagitta
