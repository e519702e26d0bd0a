#pragma once

/// Which outlines touch or cross, found on a grid.

#include <cstddef>
#include <optional>
#include <vector>

#include "artwork/ShapeOutline.hpp"

namespace sagitta {

/// The limit of work for one drawing, so that a malicious drawing cannot take unlimited time.
struct Effort {
  double left = 4e9;  ///< about one for each simple step
  bool spend(double steps) { return (left -= steps) > 0; }
};

/// Groups of outlines that are connected by touching or crossing.
struct Clusters {
  std::vector<std::size_t> cluster;  ///< of each outline: the first outline of its group
  std::vector<bool> touched;         ///< of each outline: it touches or crosses another or itself
};

/// `touch` is how near counts as touching, mm. Nothing when there are so many crossings that the effort runs out.
std::optional<Clusters> clusters(const std::vector<const Outline*>& outlines, double touch, Effort& effort);

}  // namespace sagitta
