#pragma once

/// The morphology that round cutters do to a drawn region. Lengths in mm.

#include <optional>

#include "plane/Cancel.hpp"
#include "polygon/Region.hpp"

namespace sagitta {

/// The region with every outer corner as round as a disc of `radius` leaves it; strips narrower than the disc go.
Region opened(const Region& region, double radius, const Cancel& cancel = {});
/// The region with every inner corner as round as that; gaps narrower than the disc are filled.
Region closed(const Region& region, double radius, const Cancel& cancel = {});

/// What a cutter makes of a drawn region.
struct OpenClosed {
  Region region;  ///< opened by the cutter's radius; empty when nothing is left
  /// Where a gap stays that the cutter does not pass; none: closing by its radius adds nothing either.
  std::optional<Point> narrow;
};

/// The drawn region as a cutter of `radius` (>= 0) can make it, from inside and from outside: opened and closed in
/// turn. Where the two would undo each other for ever, the gap is made as wide as the cutter, or filled with a neck as
/// wide as it: whichever changes less. Nothing is added where `taken` lies; that must be opened by `radius` and clear
/// of `drawn`. When it is cancelled, the result is unspecified.
OpenClosed open_close(const Region& drawn, double radius, const Region& taken = {}, const Cancel& cancel = {});

/// The largest cutter radius up to `most` with which no point departs from the drawing by more than `limit`; 0 when
/// there is none. To 0.001 mm.
double largest_radius(const Region& drawn, double limit, double most, const Cancel& cancel = {});

}  // namespace sagitta
