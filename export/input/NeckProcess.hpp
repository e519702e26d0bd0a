#pragma once

/// A neck's STEP file, which comes from a stranger, is read in a process of its own with limits on memory and time.

#include <optional>
#include <string>

#include "neck/NeckShape.hpp"
#include "neck/NeckWood.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

struct NeckLimits {
  std::size_t bytes = 64U << 20;  ///< largest file that is looked at
  long long memory = 2LL << 30;   ///< of the process
  double seconds = 10;            ///< by the clock on the wall
};

/// The neck that the board names, read by this very program run again; nothing when it names none. A file that is
/// missing, no regular file, too large, too slow, too greedy, or that kills its reader ends in NeckReading::failure; so
/// does one outside the board's folder unless the board was prepared with that allowed.
std::optional<NeckReading> read_neck_apart(const PreparedBoard& ready, const NeckLimits& limits = {});

/// The wood of the neck that the board names, lying under the board where it was found; in a process of its own as
/// above, so that a picture that needs too much loses no measurement. Nothing when the board names no neck.
std::optional<NeckWood> mesh_neck_apart(const PreparedBoard& ready, const NeckPlace& place,
                                        const NeckLimits& limits = {});

}  // namespace sagitta
