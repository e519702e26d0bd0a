#pragma once

#include "inlay/Region.hpp"

namespace sagitta {

/// How far a refitted curve may stray from the polygon that it stands for, mm: with the polygon's own chords it stays
/// within 0.002 mm of the fitted shape.
inline constexpr double refit_tolerance = 0.0015;

/// The region's outlines as true lines and arcs within `tolerance` of its polygons. Real corners stay corners; between
/// them lines and arcs follow each other with one tangent. The polygons must be finer than 0.0005 mm where they stand
/// for curves. Where outlines run nearer to each other than four tolerances they are followed more closely, so that
/// they do not cross. Outer corners are no sharper than `least_radius`, inner ones no sharper than `least_hollow`,
/// where the polygons' are not.
Loops refitted(const Region& region, double tolerance = refit_tolerance, double least_radius = 0,
               double least_hollow = 0);

/// The same outlines moved out by `by` (in, when negative), for tiny amounts: no piece may vanish. mm.
Loops nudged(const Loops& loops, double by);

double area(const Loops& loops);
Box bounds(const Loops& loops);

}  // namespace sagitta
