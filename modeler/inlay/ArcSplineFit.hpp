#pragma once

/// The outlines of a region fitted with arc splines.

#include "inlay/FitTolerance.hpp"
#include "polygon/Region.hpp"

namespace sagitta {

/// The region's outlines as true lines and arcs within `stray` of its polygons. Real corners stay corners; between them
/// lines and arcs follow each other with one tangent. The polygons must be as fine as `tolerance::flattening` where
/// they stand for curves. Where outlines run nearer to each other than four times `stray` they are followed more
/// closely, so that they do not cross. Outer corners are no sharper than `least_radius`, inner ones no sharper than
/// `least_hollow`, where the polygons' are not.
Loops fit_arc_splines(const Region& region, double stray = tolerance::refit, double least_radius = 0,
                      double least_hollow = 0);

/// The same outlines moved out by `by` (in, when negative), for tiny amounts: no piece may vanish. mm.
Loops nudged(const Loops& loops, double by);

double area(const Loops& loops);
Box bounds(const Loops& loops);

}  // namespace sagitta
