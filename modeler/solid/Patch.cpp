#include "solid/Patch.hpp"

#include <Geom_BSplineSurface.hxx>
#include <Geom_CylindricalSurface.hxx>
#include <Geom_Plane.hxx>
#include <algorithm>
#include <gp_Ax3.hxx>

#include "solid/Pcurve.hpp"

namespace sagitta {
namespace {

/// Aim for pcurves in a patch, mm on the surface.
constexpr double aim = 2e-8;

/// Largest radius of a cylinder, mm. The kernel's readers take edges that leave a vertex side by side for one where
/// they are 1e-7 apart in a face's parameters, and a cylinder's are angles: that is 0.00006 mm here, less than the
/// snap.
constexpr double largest_cylinder = 600;

Handle(Geom_Surface) plane_of(const Surface& surface, const BoundingSurface& bound) {
  const double slope = bound.fallen ? surface.fall_slope : 0, start = bound.fallen ? *surface.fall_start : 0;
  const gp_Dir normal(slope, 0, 1);
  return new Geom_Plane(gp_Ax3(gp_Pnt(start, 0, surface.thickness - bound.value), normal, gp_Dir(1, 0, -slope)));
}

/// First parameter pi at the crown and falling with y, so that the seam lies below; second parameter x.
Handle(Geom_Surface) cylinder_of(const Surface& surface, const BoundingSurface& bound) {
  const gp_Pnt centre(0, 0, surface.thickness - bound.value - surface.r0);
  return new Geom_CylindricalSurface(gp_Ax3(centre, gp_Dir(1, 0, 0), gp_Dir(0, 0, -1)), surface.r0);
}

/// Control points of the arc at x for radius R: (-R sin a, ..), (0, R / cos a), (R sin a, ..); weights 1, cos a, 1.
/// Parameters x and, from `-width` to `width`, about y: what is apart on the surface is as far apart in them.
Handle(Geom_Surface)
    patch_of(const Surface& surface, const BoundingSurface& bound, double low, double high, double sine, double width) {
  const int degree = surface.r2 == 0 ? 1 : 2;
  const double cosine = std::sqrt((1 - sine) * (1 + sine));
  const double slope = bound.fallen ? surface.fall_slope : 0, start = bound.fallen ? *surface.fall_start : 0;
  TColgp_Array2OfPnt poles(1, degree + 1, 1, 3);
  TColStd_Array2OfReal weights(1, degree + 1, 1, 3);
  for (int row = 0; row <= degree; ++row) {
    const double x = low + (high - low) * row / degree;
    double r = surface.radius(x);
    if (degree == 2 && row == 1) r = surface.radius(low) + surface.radius_slope(low) * (high - low) / 2;
    const double crown = surface.thickness - bound.value - slope * (x - start);
    poles(row + 1, 1) = gp_Pnt(x, -r * sine, crown - r * (1 - cosine));
    poles(row + 1, 2) = gp_Pnt(x, 0, crown + r * (1 / cosine - 1));
    poles(row + 1, 3) = gp_Pnt(x, r * sine, crown - r * (1 - cosine));
    weights(row + 1, 1) = weights(row + 1, 3) = 1;
    weights(row + 1, 2) = cosine;
  }
  TColStd_Array1OfReal u(1, 2), v(1, 2);
  u(1) = low;
  u(2) = high;
  v(1) = -width;
  v(2) = width;
  TColStd_Array1OfInteger along(1, 2), across(1, 2);
  along.Init(degree + 1);
  across.Init(3);
  return new Geom_BSplineSurface(poles, weights, u, v, along, across, degree, 2);
}

}  // namespace

Patch::Patch(const Surface& surface, const BoundingSurface& bound, double low, double high, double slant)
    : law_(surface) {
  plane_ = surface.flat;
  cylinder_ = !plane_ && surface.r1 == 0 && surface.r2 == 0 && !(bound.fallen && surface.fall_slope != 0) &&
              surface.r0 <= largest_cylinder;
  const double sine = slant + 0.05 * std::min(slant, 1 - slant);  // no wider than needed: pcurves keep their digits
  const double width = surface.radius((low + high) / 2) * sine;
  scale_ = width / std::tan(std::asin(sine) / 2);
  geometry_ = plane_      ? plane_of(surface, bound)
              : cylinder_ ? cylinder_of(surface, bound)
                          : patch_of(surface, bound, low, high, sine, width);
}

std::array<Jet, 2> Patch::parameters(Jet x, Jet y) const {
  const Jet radius = law_.r0 + x * (law_.r1 + law_.r2 * x);
  if (cylinder_) return {std::numbers::pi - asin(y / radius), x};
  const Jet root = sqrt((radius - y) * (radius + y));
  const Jet half = y / (radius + root);  // tangent of half the angle from the crown
  return {x, scale_ * half};
}

Handle(Geom2d_Curve) Patch::pcurve(const EdgeCurve& edge, double& deviation) const {
  const std::array<double, 2> weight = cylinder_ ? std::array<double, 2>{law_.r0, 1} : std::array<double, 2>{1, 2};
  const HermiteSpline<2> fitted = fit_hermite_spline<2>(
      [&](double t, std::size_t span) {
        const std::array<Jet, 3> p = edge.place(t, span);
        return parameters(p[0], p[1]);
      },
      edge.spans(), weight, aim);
  deviation = std::max(deviation, fitted.deviation + edge.deviation);
  return pcurve_of(fitted);
}

}  // namespace sagitta
