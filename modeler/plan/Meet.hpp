#pragma once

/// The points where two curve segments meet.

#include <optional>
#include <vector>

#include "plane/Plane.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {

/// A point that two segments share, with its parameter on each (0 at the start, 1 at the end).
struct Meeting {
  double on_first = 0, on_second = 0;
  Point p;
};

/// Appends every point where the two segments cross, touch, or come within `reach` at an end or at a tangent point. Of
/// segments that run together, the ends of each that lie on the other. Closed form throughout; a contact is decided by
/// the distance from centre to line or centre to centre before any curve is intersected.
void meet(const CurveSegment& first, const CurveSegment& second, std::vector<Meeting>& out,
          double reach = tolerance::vertex);

/// Where the segment passes p within `reach`: the parameter there, in [0, 1].
std::optional<double> passes_near(const CurveSegment& segment, Point p, double reach);

}  // namespace sagitta
