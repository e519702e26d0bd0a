#pragma once

/// The two long edges: y = -+ (at_nut + slope x), straight, symmetric about the centre line. mm.

#include <optional>

#include "board/Board.hpp"
#include "board/Problem.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

struct Taper {
  double at_nut = 0;  ///< half width at x = 0
  double slope = 0;   ///< change of the half width per mm of x

  double half(double x) const { return at_nut + slope * x; }
  /// Mm along an edge for each mm of x.
  double stretch() const { return std::hypot(1, slope); }
  /// Unit vector along the edge at negative y, toward the bridge.
  Point along_low() const { return unit({1, -slope}); }
  /// True when a line in this direction crosses both edges.
  bool crossed_by(Point direction) const;
  /// Where the line through (x, 0) in `direction` (toward +y, crossing both edges) meets the edge at negative (side -1)
  /// or positive y (side +1).
  Point meet(int side, double x, Point direction) const;
};

/// The taper that the board asks for, given the strings' spread at x = 0, its slope, and x of the heel end. Empty, with
/// faults added, when the form is incomplete or a width is not above 0.
std::optional<Taper> taper_of(const Shape& shape, double spread, double spread_slope, double heel_end, Faults& faults);

}  // namespace sagitta
