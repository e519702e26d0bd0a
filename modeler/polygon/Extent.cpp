#include "polygon/Extent.hpp"

#include <algorithm>

namespace sagitta {
namespace {

bool holds(const Box& outer, const Box& inner) {
  return outer.low.x <= inner.low.x && outer.low.y <= inner.low.y && outer.high.x >= inner.high.x &&
         outer.high.y >= inner.high.y;
}

bool covers_some(const Region& region, const Region& other) {
  return std::any_of(other.begin(), other.end(), [&](const Polygon& p) { return contains(region, p.front()); });
}

}  // namespace

bool Extent::may_meet(const Extent& other, double reach) {
  if (!box_.overlaps(other.box_, reach)) return false;
  if (!holds(box_, other.box_) && !holds(other.box_, box_)) return true;
  if (!index_) index_.emplace(region_);
  return index_->reaches(other.region_, reach) || covers_some(region_, other.region_) ||
         covers_some(other.region_, region_);
}

}  // namespace sagitta
