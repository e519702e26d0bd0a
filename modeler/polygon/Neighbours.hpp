#pragma once

/// Groups of polygons that are near each other, and the polygons that enclose each group.

#include "polygon/Region.hpp"

namespace sagitta {

/// Polygons that have to do with each other, and those about them that have not.
struct Neighbours {
  std::vector<int> members;  ///< indices, in order
  std::vector<int> about;    ///< polygons that go round all members and come near none
};

/// Polygons whose outlines come within `reach` (mm) of each other are in one group, and others where a closer look
/// would not pay. Groups come in the order of their first polygons.
std::vector<Neighbours> neighbours(const std::vector<const Polygon*>& polygons, double reach);

}  // namespace sagitta
