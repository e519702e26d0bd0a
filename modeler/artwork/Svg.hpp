#pragma once

/// SVG 1.1 read into the shapes that it fills.

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "artwork/Outline.hpp"
#include "board/Problem.hpp"

namespace sagitta {

/// What a drawing fills, in file order, mm with y up, and what was left out.
struct Shapes {
  std::vector<Shape> shapes;
  Faults notes;
};

std::variant<Shapes, Faults> svg_shapes(std::string_view text);

}  // namespace sagitta
