#pragma once

/// The cut list of the strips along the edges: binding and lines.

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "wood/EdgeStrips.hpp"

namespace sagitta {

/// One row a strip: edge (lower or upper), strip (binding, line 1, ..), material (empty for the binding), thickness,
/// height, length; mm.
std::string strip_csv(const std::vector<EdgeStrip>& list);

/// [{edge, strip, material, thickness, height, length}], mm; material is null for the binding.
nlohmann::ordered_json strip_json(const std::vector<EdgeStrip>& list);

}  // namespace sagitta
