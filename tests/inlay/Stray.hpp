#pragma once

#include <algorithm>

#include "polygon/OutlineIndex.hpp"

namespace sagitta::test {

/// The greatest way from a point of one outline to the other. mm.
inline double stray(const Region& a, const Region& b) {
  double most = 0;
  const OutlineIndex index(b);
  for (const Polygon& polygon : a)
    for (const Point p : polygon) most = std::max(most, index.nearest(p).distance);
  return most;
}

}  // namespace sagitta::test
