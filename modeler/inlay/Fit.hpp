#pragma once

/// The morphology that round cutters do to a drawn region. Lengths in mm.

#include <optional>

#include "inlay/Region.hpp"
#include "plane/Cancel.hpp"

namespace sagitta {

/// Nothing moves by more than this any more when a fit has settled. mm.
inline constexpr double fit_settled = 0.001;

/// The region with every outer corner as round as a disc of `radius` leaves it; strips narrower than the disc go.
Region opened(const Region& region, double radius, const Cancel& cancel = {});

/// The drawn region as a cutter of `radius` (>= 0) can make it: opened and closed in turn until nothing moves by more
/// than fit_settled, ending with an opening. Nothing when that does not settle in 8 rounds, or was cancelled. Empty
/// when nothing is left.
std::optional<Region> fit(const Region& drawn, double radius, const Cancel& cancel = {});

/// How far the made region departs from the drawn one: the greatest way from a point of one to the other, and where.
struct Departure {
  double distance = 0;
  Point at;
};
/// `made` must not be empty.
Departure departure(const Region& drawn, const Region& made);
/// The same where what is lost of the drawing, `without(drawn, made)`, is known.
Departure departure(const Region& drawn, const Region& made, const Region& lost);

/// The largest cutter radius up to `most` with which no point departs from the drawing by more than `limit`; 0 when
/// there is none. To 0.001 mm.
double largest_radius(const Region& drawn, double limit, double most, const Cancel& cancel = {});

}  // namespace sagitta
