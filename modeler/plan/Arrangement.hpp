#pragma once

/// The arrangement of outlines: all loops in one planar subdivision, split where they meet.

#include <utility>
#include <vector>

#include "plan/Subdivision.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {

/// A curve of the arrangement. The curves of a closed outline have the same `loop`; a line that bounds nothing has loop
/// = -1.
struct InputCurve {
  CurveSegment segment;
  Source source;
  int loop = -1;
};

struct Arrangement {
  Subdivision map;                       ///< traced
  std::vector<std::vector<int>> covers;  ///< for each face: the loops around it, sorted

  /// Area of the faces that each loop winds about, mm^2: its own area where it crosses itself nowhere, but for what
  /// rounding has moved.
  std::vector<double> covered(int loops) const;
};

/// Cuts the input curves where they meet. Points within tolerance::vertex become one vertex, segments that run together
/// become one edge with the source of the first; then the arrangement is rounded (see Rounding.hpp): nothing in it
/// comes nearer to anything else than about `snap`. No input curve may be shorter than tolerance::vertex.
Arrangement arrange(const std::vector<InputCurve>& strands, double snap = tolerance::snap);

}  // namespace sagitta
