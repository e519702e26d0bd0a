#pragma once

/// What was measured beside what was planned.

#include <optional>
#include <string>
#include <vector>

#include "inlay/Inlays.hpp"

namespace sagitta {

/// One measured value; lengths in mm.
struct MeasuredValue {
  std::string key;                ///< "measured.tape", "measured.pocket_depths.shell-01", "measured.widths[0]"
  std::string what, where;        ///< in the trade's words: what is measured, and where
  std::optional<double> planned;  ///< none where the planned board cannot be laid out
  double measured = 0;
  double tolerance = 0;  ///< how far it may be off before anything is lost; common practice, no source
};

/// Every value of [measured] that is a length, in the order of its keys; `inlays`: the board's pieces. `done`, `chips`
/// and `serial` were not planned and are left out.
std::vector<MeasuredValue> measured_values(const Board& planned, const Inlays& inlays);

}  // namespace sagitta
