#pragma once

/// How far a face's triangles stray from its surface.

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "mesh/Bands.hpp"
#include "plan/BoundingSurface.hpp"

namespace sagitta {

/// A level or a form of the moved playing surface as what triangles are measured against. Lengths in mm.
class Deviation {
 public:
  Deviation(const Surface& surface, const BoundingSurface& bound);

  /// The largest distance of triangles with these loops about them, of each at up to fifteen places: the loops'
  /// corners, the quarters of its sides, and three places within. A side is measured once.
  double of(const std::vector<std::array<float, 3>>& points, const std::vector<std::vector<BandPoint>>& loops,
            std::span<const std::array<std::uint32_t, 3>> triangles) const;

 private:
  using Place = std::array<double, 3>;
  double at(const Place& p) const;
  double of_side(const Place& a, const Place& b) const;
  double within(const Place& a, const Place& b, const Place& c) const;

  const Surface& surface_;
  const BoundingSurface& bound_;
  double crown_, fall_;  ///< height of the moved centre line, crown_ - fall_ x
};

}  // namespace sagitta
