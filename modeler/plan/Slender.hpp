#pragma once

/// Area and slenderness of a face.

#include "plan/Subdivision.hpp"

namespace sagitta {

/// Area of a face by Green's theorem, holes taken off, mm^2: exact for lines and arcs. Intersection curves count as
/// their chords.
double area(const Subdivision& map, int face);

/// The mean width of a face: twice its area over its perimeter, mm. Intersection curves count as their chords.
double mean_width(const Subdivision& map, int face);

/// Faces narrower than this are taken care of: programs that check a face take arcs for polylines, and those of two
/// arcs side by side may cross. mm.
inline constexpr double slender = 0.01;

}  // namespace sagitta
