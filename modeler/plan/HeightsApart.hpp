#pragma once

/// Whether two surfaces that bound the wood can meet within a box, told without looking for where.

#include "plan/BoundingSurface.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

/// Whether a level and the moved playing surface itself are more than two tolerances of height apart all over a box:
/// the drop y^2 / (R + sqrt(R^2 - y^2)) grows with |y| and falls with R, and crown and R lie between those at the box's
/// ends. False for other pairs, and where R is not linear: there nothing is known.
bool are_apart(const Surface& surface, const BoundingSurface& upper, const BoundingSurface& other, const Box& box);

}  // namespace sagitta
