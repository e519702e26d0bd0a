#pragma once

/// A frame around polygons that stands for the outlines outside it.

#include <algorithm>
#include <cstdlib>

#include "polygon/Grid.hpp"

namespace sagitta {

/// A rectangle that stands for outlines which enclose all others of an operation, so that Clipper need not handle them.
class Frame {
 public:
  /// All outlines of the question lie within the box, and none of their answer comes to its edge.
  Frame(const Box& box, const Grid& grid)
      : once_(grid.path({box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}})) {}

  /// As often as those go round: clockwise where `times` is negative.
  void add(int times, GridPaths& paths) const {
    paths.insert(paths.end(), std::abs(times), times > 0 ? once_ : GridPath(once_.rbegin(), once_.rend()));
  }
  void take_off(GridPaths& paths) const {
    std::erase_if(paths,
                  [&](const GridPath& path) { return std::find(path.begin(), path.end(), once_[0]) != path.end(); });
  }

 private:
  GridPath once_;
};

}  // namespace sagitta
