#pragma once

/// SVG 1.1 read into the shapes that it fills.

#include <string_view>
#include <variant>

#include "artwork/Assembly.hpp"

namespace sagitta {

std::variant<DrawnShapes, Faults> svg_shapes(std::string_view text);

}  // namespace sagitta
