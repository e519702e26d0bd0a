#pragma once

/// The mirrored layout of a left-handed board.

#include "layout/Layout.hpp"

namespace sagitta {

/// The left-handed layout of a right-handed one: everything mirrored in y, outline and edges again in their usual
/// order. Blank and strip are not touched.
Layout mirrored(Layout layout);

}  // namespace sagitta
