#pragma once

/// How far the forms of the playing surface bend, seen from above. Lengths in mm.

#include "surface/Surface.hpp"

namespace sagitta {

/// Bounds of the second derivatives of a height z(x, y): |z_xx|, |z_xy|, |z_yy|. 1/mm.
struct Bend {
  double along = 0, mixed = 0, across = 0;
};

/// What a scalloped space adds to the playing surface, from y = low to y = high.
Bend bend_of(const ScallopedSpace& space, double low, double high);

/// What a bevel adds to the playing arc, of `radius`, that it begins on: along the board the height there bends by
/// D_yy (slope - y R'/R)^2, of which 2 slope^2 / radius and the arc's own bend at one y are nearly a bound. The
/// deviation that a mesh measures decides.
Bend bend_of(const WorkedEdge& edge, double radius);

/// What a form adds at x, from y = low to y = high. `form` as in plan/BoundingSurface: 0 is the playing surface itself,
/// i > 0 the scalloped space i - 1, i < 0 the bevel of the worked edge -1 - i.
Bend bend_of_form(const Surface& surface, int form, double x, double low, double high);

}  // namespace sagitta
