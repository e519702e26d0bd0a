#pragma once

/// From what was drawn to regions that can be cut: outlines nested, mended, and cut clear of what lies above them.

#include <variant>

#include "artwork/Artwork.hpp"
#include "artwork/ShapeOutline.hpp"
#include "board/Problem.hpp"

namespace sagitta {

/// What a drawing fills, in file order, mm with y up, and what was left out.
struct DrawnShapes {
  std::vector<DrawnShape> shapes;
  Faults notes;
};

/// One region for each shape, or for each group of shapes of one colour that overlap. Where shapes of different
/// colours overlap, the later one lies above and the earlier loses what is covered. Every mending is noted.
std::variant<Artwork, Faults> assemble(DrawnShapes drawn);

}  // namespace sagitta
