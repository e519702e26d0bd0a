#pragma once

/// The chart of a bound that is a form or a roll, and the foot that its heights count from.

#include "plan/BoundingSurface.hpp"
#include "surface/FormChart.hpp"

namespace sagitta {

inline FormChart chart_of(const Surface& surface, const BoundingSurface& bound) {
  return bound.round() ? chart_of_roll(surface, bound.form) : chart_of_form(surface, bound.form);
}

/// T is double or a jet.
template <class T>
T foot_of(const Surface& surface, const BoundingSurface& bound, T x, T y) {
  return bound.round() ? axis_of(surface, bound, x) : height_over(surface, bound, x, y);
}

}  // namespace sagitta
