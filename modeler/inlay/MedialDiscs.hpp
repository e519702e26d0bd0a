#pragma once

/// Discs on the medial axis of a narrow place.

#include "polygon/Region.hpp"

namespace sagitta {

/// The side of an outline that is looked at: the region itself, or what is outside of it.
enum class OutlineSide { inside, outside };

/// Where a side of the region's outline is narrower than a disc of `radius`: all discs of that radius about the middles
/// of the narrow places, in one region. The middles are those of the largest discs that touch the outline from that
/// side, found by shrinking (Ma, Bae and Choi 2012, "3D medial point approximation using nearest neighbors and the
/// normal field"). Only the outline within `near` is looked at. Lengths in mm.
Region medial_discs(const Region& region, OutlineSide side, double radius, const std::vector<Box>& near,
                    const Cancel& cancel = {});

}  // namespace sagitta
