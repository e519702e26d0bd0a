#pragma once

/// Fitted curves as splines of the geometry kernel: pcurves, and curves in space.

#include <Geom2d_BSplineCurve.hxx>
#include <Geom_BSplineCurve.hxx>

#include "solid/HermiteSpline.hpp"

namespace sagitta {

/// A fitted curve of the parameter plane as the kernel's spline.
Handle(Geom2d_BSplineCurve) pcurve_of(const HermiteSpline<2>& fitted);

/// A fitted curve in space as the kernel's spline.
Handle(Geom_BSplineCurve) spline_of(const HermiteSpline<3>& fitted);

/// A spline's z over its own parameter, moved by `from`: its pcurve in an upright wall whose first parameter runs
/// evenly with the spline's. The spline's own z poles over its Greville abscissae.
Handle(Geom2d_BSplineCurve) height_pcurve(const Handle(Geom_BSplineCurve) & spline, double from);

}  // namespace sagitta
