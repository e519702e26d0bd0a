#pragma once

/// A smooth surface as a B-spline patch of the geometry kernel.

#include <Geom_BSplineSurface.hxx>
#include <array>
#include <functional>

#include "surface/FormChart.hpp"

namespace sagitta {

/// x, y and z in mm at two parameters.
using PlaceAt = std::function<std::array<double, 3>(double, double)>;

struct FittedPatch {
  Handle(Geom_BSplineSurface) surface;
  double deviation = 0;  ///< largest measured between the places that it was led through, mm
};

/// The tensor-product B-spline of degree 7 through the places over the Greville abscissae of even knots, each direction
/// with as many spans as leave 1e-9 mm (or 64; `deviation` tells). Interpolation there exists and is well conditioned
/// for these degrees (Schoenberg and Whitney; de Boor, A Practical Guide to Splines, ch. XIII).
FittedPatch fit_patch(const PlaceAt& place, const ParameterBox& box);

}  // namespace sagitta
