#pragma once

/// Where a line of constant x crosses the outlines of a neck's face: its stretches of wood. Lengths in mm.

#include <array>
#include <vector>

namespace sagitta {

using Place3 = std::array<double, 3>;

/// Closed polylines; a face's holes too. What lies within an odd number of them is wood.
using NeckOutlines = std::vector<std::vector<Place3>>;

/// A stretch of wood across the neck, with the height of its two ends.
struct FaceSpan {
  double low = 0, high = 0;
  double low_z = 0, high_z = 0;
};

/// The stretches at this x by rising y. Stretches that touch are one: faces may be split.
std::vector<FaceSpan> spans_at(const NeckOutlines& outlines, double x);

/// The stretches of x at this y, in the same way.
std::vector<FaceSpan> spans_along(const NeckOutlines& outlines, double y);

}  // namespace sagitta
