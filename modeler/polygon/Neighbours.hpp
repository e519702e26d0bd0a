#pragma once

/// Groups of polygons that are near each other, and the polygons that enclose each group.

#include "polygon/Region.hpp"

namespace sagitta {

/// A group of polygons that are near each other, and the polygons that enclose the group.
struct Neighbours {
  std::vector<int> members;  ///< indices, in order
  std::vector<int> about;    ///< polygons that enclose all members and are near none of them
};

/// Groups of polygons whose outlines are closer than `reach` (mm) to each other. The test uses boxes first, so a group
/// can also contain polygons that are a little further apart. Groups are in the order of their first polygons.
std::vector<Neighbours> neighbours(const std::vector<const Polygon*>& polygons, double reach);

}  // namespace sagitta
