#pragma once

#include "plane/Plane.hpp"

namespace sagitta {

/// A whole ellipse of the plane, mm.
struct Ellipse {
  Point centre;
  Point major;       ///< from the centre to an end of the longer axis
  double ratio = 1;  ///< the shorter half axis over the longer, in (0, 1]
  friend bool operator==(const Ellipse&, const Ellipse&) = default;
};

inline Ellipse moved(const Ellipse& e, Point by) { return {e.centre + by, e.major, e.ratio}; }
/// Turned about the origin, counter-clockwise positive.
inline Ellipse turned(const Ellipse& e, double angle) {
  return {turned(e.centre, angle), turned(e.major, angle), e.ratio};
}
/// Mirrored in y.
inline Ellipse mirrored(const Ellipse& e) { return {{e.centre.x, -e.centre.y}, {e.major.x, -e.major.y}, e.ratio}; }

}  // namespace sagitta
