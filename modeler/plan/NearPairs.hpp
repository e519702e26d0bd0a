#pragma once

/// All pairs of boxes that are near each other.

#include <algorithm>
#include <numeric>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Calls visit(i, j) once for every two boxes that are within `margin` of each other, by a sweep along x: i is the one
/// that begins later.
template <class Visit>
void near_pairs(const std::vector<Box>& boxes, double margin, Visit visit) {
  std::vector<int> order(boxes.size());
  std::iota(order.begin(), order.end(), 0);
  std::sort(order.begin(), order.end(), [&](int a, int b) { return boxes[a].low.x < boxes[b].low.x; });
  std::vector<int> open;
  for (const int i : order) {
    std::erase_if(open, [&](int j) { return boxes[j].high.x < boxes[i].low.x - margin; });
    for (const int j : open)
      if (boxes[i].overlaps(boxes[j], margin)) visit(i, j);
    open.push_back(i);
  }
}

}  // namespace sagitta
