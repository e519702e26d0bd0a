#pragma once

/// Loose lines, arcs and curves joined into outlines.

#include <string>
#include <vector>

#include "artwork/Curve.hpp"
#include "artwork/Notes.hpp"

namespace sagitta {

/// A run of strokes, head to tail, and where it came from.
struct Run {
  PathLoop strokes;
  std::string where;
};

/// Closed outlines from runs of one colour. Ends up to tolerance::drawn_join apart are one; runs drawn twice are taken
/// once. What stays open is noted with the place of its ends and left out.
std::vector<PathLoop> chained(std::vector<Run> runs, Notes& notes);

/// The same, and what stays open is kept: a closed outline ends exactly where it begins, an open line does not.
std::vector<PathLoop> joined(std::vector<Run> runs, Notes& notes);

}  // namespace sagitta
