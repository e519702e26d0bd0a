#pragma once

/// All findings of a board: every family asked, the gravest first.

#include <vector>

#include "inlay/Inlays.hpp"
#include "neck/NeckShape.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// Everything that would go wrong, the gravest first; no solid is built. A part of the job has the findings of the
/// whole board: what is cut at another time is there all the same. `neck` is what was read of neck.file; null: what
/// needs it is left out.
std::vector<Finding> findings_of(const PreparedBoard& ready, const NeckReading* neck = nullptr);

}  // namespace sagitta
