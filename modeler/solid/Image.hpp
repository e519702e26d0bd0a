#pragma once

#include <Geom2d_BSplineCurve.hxx>

#include "solid/Fit.hpp"

namespace sagitta {

/// A fitted curve of the parameter plane as the kernel's spline.
Handle(Geom2d_BSplineCurve) image_of(const Fitted<2>& fitted);

}  // namespace sagitta
