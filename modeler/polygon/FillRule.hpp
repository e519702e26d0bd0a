#pragma once

/// The rules that say which points closed outlines fill.

namespace sagitta {

/// Which points closed outlines fill, by how often they wind about them: SVG 1.1, section 11.3, has the first two.
enum class FillRule { nonzero, evenodd, positive };

inline bool filled(int turns, FillRule rule) {
  if (rule == FillRule::positive) return turns > 0;
  return rule == FillRule::nonzero ? turns != 0 : turns % 2 != 0;
}

}  // namespace sagitta
