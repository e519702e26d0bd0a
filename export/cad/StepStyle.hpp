#pragma once

/// The schema and the unit of a STEP file.

#include "board/Board.hpp"

namespace sagitta {

enum class StepSchema { ap214, ap242 };

/// How a STEP file is written.
struct StepStyle {
  StepSchema schema = StepSchema::ap214;
  Units units = Units::mm;
  friend bool operator==(const StepStyle&, const StepStyle&) = default;
};

}  // namespace sagitta
