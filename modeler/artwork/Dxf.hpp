#pragma once

/// DXF outlines read into the shapes that they bound.

#include <string_view>
#include <variant>

#include "artwork/Assembly.hpp"
#include "artwork/Chains.hpp"
#include "board/Board.hpp"

namespace sagitta {

/// Outlines of one colour nest by even and odd; each outer one with its holes is a shape. Larger shapes come first, so
/// that what is drawn inside another lies above it, in whatever order it was drawn. `units`: what notes tell lengths
/// in.
std::variant<DrawnShapes, Faults> dxf_shapes(std::string_view text, Units units = Units::mm);

/// Every curve of the drawing as a run of strokes, closed or open, whatever its colour.
std::variant<std::vector<Run>, Faults> dxf_runs(std::string_view text, Units units = Units::mm);

/// Whether it says what its unit is ($INSUNITS).
bool dxf_says_its_size(std::string_view text);

}  // namespace sagitta
