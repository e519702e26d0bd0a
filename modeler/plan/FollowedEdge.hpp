#pragma once

/// How the curve in which two surfaces are equally high is followed from one vertex to the next.

#include "plan/BoundingSurface.hpp"

namespace sagitta {

/// An edge of such a curve, along which x and y both rise or fall. The place at t in [0, 1] is looked for from the
/// chord's place at t, in one direction: square to the chord; or, where the curve leaves one of the ends along an axis
/// and turns away from it sharply, square to that axis.
class FollowedEdge {
 public:
  FollowedEdge(const SurfacePair& meeting, Point a, Point b);

  /// The direction in which the curve is looked for; a unit vector.
  Point direction() const { return direction_; }
  /// The place at t; that on the chord where none is found.
  Point at(double t) const;

 private:
  const SurfacePair& meeting_;
  Point a_, b_, direction_;
  double sense_ =
      0;  ///< whether the gap of the heights rises along the direction where the curve passes (> 0) or falls
};

/// Where the curve passes x, between a and b; on the chord where it is not found.
double followed_y(const SurfacePair& meeting, Point a, Point b, double x);

}  // namespace sagitta
