#pragma once

/// The width of the neck as it was measured.

#include <optional>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// Width of the neck at x, mm, as measured: straight between neck.nut_width at x = 0 and neck.body_width at
/// neck.body_at. Nothing where it was not measured, or past the board's heel end.
std::optional<double> neck_width(const PreparedBoard& ready, double x);

/// x where the board's edges and the neck's cross, if they do between the nut and the body end (or the heel end, if
/// that comes first).
std::optional<double> neck_crossing(const PreparedBoard& ready);

}  // namespace sagitta
