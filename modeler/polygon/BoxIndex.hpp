#pragma once

/// An R-tree of boxes.

#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Many boxes, made ready for the question which of them are near a place: an R-tree packed by sort-tile-recursive
/// (Leutenegger, Lopez, Edgington: STR, a simple and efficient algorithm for R-tree packing, 1997). It is made in
/// O(n log n) and answers in O(log n) and what it finds.
class BoxIndex {
 public:
  BoxIndex() = default;
  explicit BoxIndex(const std::vector<Box>& boxes);

  /// The boxes within `margin` (mm, along x and along y) of this one, by their indices in rising order.
  std::vector<int> near(const Box& box, double margin = 0) const;

 private:
  struct Node {
    Box box;
    int first = 0, count = 0;  ///< children in the level below; of the lowest level: into order_
  };
  void ask(std::size_t level, const Node& node, const Box& box, double margin, std::vector<int>& found) const;

  std::vector<Box> boxes_;
  std::vector<int> order_;
  std::vector<std::vector<Node>> levels_;  ///< the lowest first; the last has one node
};

}  // namespace sagitta
