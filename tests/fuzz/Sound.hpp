#pragma once

/// What must hold of every drawing that is read.

#include <cmath>

#include "Demand.hpp"
#include "artwork/Curve.hpp"
#include "artwork/ReadArtwork.hpp"

namespace sagitta::test {

inline void expect_sound_or_refused(const ArtworkOrFaults& read) {
  if (const Faults* faults = std::get_if<Faults>(&read)) {
    demand(!faults->empty(), "a refusal has a reason");
    for (const Fault& fault : *faults)
      demand(!fault.message.empty() && !fault.hint.empty(), "a reason says what to do");
    return;
  }
  std::size_t segments = 0;
  for (const DrawnRegion& region : std::get<Artwork>(read).regions) {
    demand(region.colour.size() == 7 && region.colour[0] == '#', "a colour is #rrggbb");
    demand(!region.outlines.empty(), "a region has outlines");
    double sum = 0;
    for (const PathLoop& loop : region.outlines) {
      demand(!loop.empty(), "an outline has strokes");
      segments += loop.size();
      sum += area(loop);
      for (std::size_t i = 0; i < loop.size(); ++i) {
        const Point end = end_of(loop[i]);
        demand(end == start_of(loop[(i + 1) % loop.size()]), "outlines are closed, head to tail");
        demand(std::abs(end.x) < 1e6 && std::abs(end.y) < 1e6, "points are finite");
      }
    }
    demand(sum > 0, "a region has an area");
  }
}

}  // namespace sagitta::test
