#pragma once

/// Opening and closing of a region by a disc, as a round cutter does it (mathematical morphology). Lengths in mm.

#include <optional>

#include "plane/Cancel.hpp"
#include "polygon/Region.hpp"

namespace sagitta {

/// The morphological opening by a disc of `radius`: outer corners get that radius, strips narrower than the disc
/// disappear.
Region opened(const Region& region, double radius, const Cancel& cancel = {});
/// The morphological closing by the same disc: inner corners get its radius, gaps narrower than the disc are filled.
Region closed(const Region& region, double radius, const Cancel& cancel = {});

/// What a cutter makes of a drawn region.
struct OpenClosed {
  Region region;  ///< opened by the cutter's radius; empty when nothing is left
  /// Where a gap stays that the cutter does not pass; none: closing by its radius adds nothing either.
  std::optional<Point> narrow;
};

/// The drawn region as a cutter of `radius` (>= 0) can make it, from inside and from outside: opened and closed until
/// neither changes it. Where opening and closing would undo each other without end, the gap is widened to the cutter's
/// width, or filled with a neck of that width, whichever changes less area. No area is added inside `taken`, which must
/// be opened by `radius` and must not touch `drawn`. When it is cancelled, the result is unspecified.
OpenClosed open_close(const Region& drawn, double radius, const Region& taken = {}, const Cancel& cancel = {});

/// The largest cutter radius up to `most` with which no point departs from the drawing by more than `limit`; 0 when
/// there is none. To 0.001 mm.
double largest_radius(const Region& drawn, double limit, double most, const Cancel& cancel = {});

}  // namespace sagitta
