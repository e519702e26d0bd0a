#pragma once

/// The bounding boxes of a region's polygons, to test quickly which regions are near each other.

#include <optional>

#include "polygon/OutlineIndex.hpp"

namespace sagitta {

/// The boxes of a region's polygons, to find which other regions are near it. The region must outlive it. Lengths in
/// mm.
class Extent {
 public:
  explicit Extent(const Region& region) : region_(region), box_(bounds(region)) {}
  const Box& box() const { return box_; }
  /// False when the regions neither overlap nor come within `reach` of each other. Of regions beside each other the
  /// boxes decide; one that lies within a gap of the other is looked at.
  bool may_meet(const Extent& other, double reach);

 private:
  const Region& region_;
  Box box_;
  std::optional<OutlineIndex> index_;  ///< once asked for
};

}  // namespace sagitta
