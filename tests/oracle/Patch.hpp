#pragma once

/// The playing surface as exact rational patches, and the solids above them: tools for 3D booleans.

#include <Geom_BSplineSurface.hxx>
#include <TopoDS_Solid.hxx>

#include "surface/Surface.hpp"

namespace sagitta::oracle {

/// An upright plane n.p = d that crosses the board; n.x > 0.
struct Wall {
  Point n{1, 0};
  double d = 0;
};

/// The surface moved down by `offset` between two walls (first the one nearer to the nut), over |y| <= R
/// sin(half_angle) along its rulings. On the rulings y/R = sin t the walls stand at x = (d - n.y R0 sin t)/(n.x + n.y k
/// sin t), so each wall's section is a rational quadratic in the one parameter that the circle x = 0 has: an exact
/// patch of degree (2, 1). R must be linear in x. `fallen`: the part beyond the line where the fall begins.
Handle(Geom_BSplineSurface)
    ruled_patch(const Surface& surface, double offset, bool fallen, Wall first, Wall last, double half_angle);

/// The same between two square walls for R quadratic in x: degree (2, 2).
Handle(Geom_BSplineSurface)
    quadratic_patch(const Surface& surface, double offset, bool fallen, double first, double last, double half_angle);

/// All points over the patch and under z = top; walls and roof are planes where the patch is ruled.
TopoDS_Solid solid_over(const Handle(Geom_BSplineSurface) & patch, double top);

/// Half angle that makes a patch over [x0, x1] reach past |y|. R must exceed |y| there.
double half_angle_past(const Surface& surface, double x0, double x1, double y);

}  // namespace sagitta::oracle
