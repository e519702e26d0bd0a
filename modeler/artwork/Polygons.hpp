#pragma once

/// The part of the overlay that is done on polygons.

#include "artwork/Overlay.hpp"

namespace sagitta {

/// Outlines of one source in a cluster, and how often what lies outside the cluster winds about it.
struct ClusterPart {
  std::vector<const Outline*> outlines;
  int around = 0;
  FillRule rule = FillRule::nonzero;
};

/// The overlay of parts whose outlines cross. With Keep::first the first part is the one that loses. `box` holds all
/// outlines. Nothing when no area overlaps by more than slivers: then the first part stays as it is.
std::optional<Outlines> cut_polygons(const std::vector<ClusterPart>& parts, Keep keep, const Box& box,
                                     const Resolution& resolution);

}  // namespace sagitta
