#pragma once

#include "inlay/Flatten.hpp"
#include "inlay/SampleDrawings.hpp"
#include "polygon/Region.hpp"

namespace sagitta::test {

/// Seeded drawings: one to four polygons, waves and discs, some touching or overlapping.
inline Artwork random_drawing(unsigned seed) {
  std::mt19937 dice(seed);
  const auto roll = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(dice()) / 4294967295.0;
  };
  Artwork artwork;
  const int count = 1 + static_cast<int>(dice() % 4);
  Region above;
  for (int i = 0; i < count; ++i) {
    const Point centre{roll(-6, 6), roll(-6, 6)};
    PathLoop loop;
    if (dice() % 3 == 0) {
      loop = wave(centre, 5 + static_cast<int>(dice() % 8), roll(2, 6), roll(0, 1.2),
                  seed + 1000 * static_cast<unsigned>(i));
    } else {
      const int corners = 3 + static_cast<int>(dice() % 7);
      std::vector<Point> points;
      for (int k = 0; k < corners; ++k)
        points.push_back(centre + roll(1, 6) * turned({1, 0}, 2 * std::numbers::pi * k / corners));
      loop = polygon(points);
    }
    // Regions of one drawing do not overlap: what lies above takes its place.
    const Region own = filled(flattened({loop}, 1, {0, 0}));
    DrawnRegion region{"#101010", {}};
    for (const Polygon& p : difference(own, above)) region.outlines.push_back(polygon(p));
    above = union_of(above, own);
    if (!region.outlines.empty()) artwork.regions.push_back(std::move(region));
  }
  return artwork;
}

}  // namespace sagitta::test
