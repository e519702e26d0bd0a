#pragma once

/// Heights of bounding surfaces with their derivatives.

#include "plan/Plan.hpp"
#include "solid/Jet.hpp"

namespace sagitta {

/// Height of a level or of the moved playing surface over jets of x and y. mm.
Jet height(const Surface& surface, const BoundingSurface& bound, Jet x, Jet y);

}  // namespace sagitta
