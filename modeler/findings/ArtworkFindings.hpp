#pragma once

#include <vector>

#include "findings/Finding.hpp"
#include "inlay/Inlays.hpp"

namespace sagitta {

/// What would go wrong with the depth of artwork's pieces, which findings_of() does not see: it has no drawings. In the
/// order of the pieces. The board must be sound, as for findings_of().
std::vector<Finding> artwork_findings(const Board& board, const Layout& layout, const Surface& surface,
                                      const Inlays& inlays);

}  // namespace sagitta
