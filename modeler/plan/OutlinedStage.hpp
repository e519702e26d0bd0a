#pragma once

/// Stages whose outline is cut.

#include "plan/Stage.hpp"

namespace sagitta {

inline bool is_outlined(Stage stage) { return stage == Stage::board || stage == Stage::finished; }

}  // namespace sagitta
