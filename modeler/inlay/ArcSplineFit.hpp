#pragma once

/// The outlines of a region fitted with arc splines.

#include "inlay/FitTolerance.hpp"
#include "polygon/Region.hpp"

namespace sagitta {

/// The region's outlines as arc splines within `stray` (mm) of its polygons. Corners stay corners; between them the
/// lines and arcs are G1. The polygons must be as fine as `tolerance::flattening` where they stand for curves. Where
/// outlines run nearer to each other than four times `stray` they are followed more closely, so that they do not cross.
/// Outer corners are no sharper than `least_radius`, inner ones no sharper than `least_hollow`, where the polygons' are
/// not.
Loops fit_arc_splines(const Region& region, double stray = tolerance::refit, double least_radius = 0,
                      double least_hollow = 0);

/// The same outlines offset by a very small `by` (inward when negative): no segment may disappear. mm.
Loops nudged(const Loops& loops, double by);

double area(const Loops& loops);
Box bounds(const Loops& loops);

}  // namespace sagitta
