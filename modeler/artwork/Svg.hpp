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

/// Whether its width or its height is a length: px, percents and no size at all say nothing of it.
bool svg_says_its_size(std::string_view text);

}  // namespace sagitta
