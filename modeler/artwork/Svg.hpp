#pragma once

/// SVG 1.1 read into the shapes that it fills, or into its lines.

#include <string_view>
#include <variant>

#include "artwork/Assembly.hpp"
#include "artwork/Chains.hpp"
#include "board/Board.hpp"

namespace sagitta {

/// `units`: what notes tell lengths in.
std::variant<DrawnShapes, Faults> svg_shapes(std::string_view text, Units units = Units::mm);

/// Every path and basic shape of the drawing as runs of strokes, closed or open, whatever its fill and stroke.
std::variant<std::vector<Run>, Faults> svg_runs(std::string_view text, Units units = Units::mm);

}  // namespace sagitta
