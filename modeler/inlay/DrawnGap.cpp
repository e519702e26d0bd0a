#include "inlay/DrawnGap.hpp"

#include <algorithm>

namespace sagitta {
namespace {

constexpr double opposite = -0.985;  // greatest cosine between the directions of two sides of a gap: 10 degrees off
constexpr double exact = 0.0001;     // mm; of a hole's width

/// The hole as a region of its own.
Region filled_hole(const Polygon& hole) { return {Polygon(hole.rbegin(), hole.rend())}; }

/// The largest disc in a hole that a disc of `radius` does not enter.
Narrowest largest_in(const Region& hole, double radius) {
  double enters = 0, bars = radius;
  Region middles = hole;
  while (bars - enters > exact) {
    const double half = (enters + bars) / 2;
    Region left = grown(hole, -half);
    if (left.empty()) {
      bars = half;
    } else {
      enters = half;
      middles = std::move(left);
    }
  }
  const Box box = bounds(middles);
  return {2 * enters, between(box.low, box.high, 0.5)};
}

}  // namespace

Narrowest drawn_gap(const Region& island, double cut) {
  Narrowest best = narrowest(island, false, cut, opposite);
  if (best.width >= cut) best = {};
  for (const Polygon& hole : island) {
    if (area(Region{hole}) > 0) continue;
    const Region own = filled_hole(hole);
    if (!grown(own, -cut / 2).empty()) continue;
    if (const Narrowest narrow = largest_in(own, cut / 2); narrow.width < best.width) best = narrow;
  }
  return best;
}

}  // namespace sagitta
