#pragma once

/// Curves as polygons with chords within a tolerance.

#include "artwork/Artwork.hpp"
#include "inlay/FitTolerance.hpp"
#include "polygon/Region.hpp"

namespace sagitta {

/// The drawn outlines, `scale` times as large and moved so that `middle` comes to the origin, as polygons within
/// `tolerance::flattening` of their curves.
Region flattened(const std::vector<PathLoop>& outlines, double scale, Point middle);
Region flattened(const Loops& loops, double chord = tolerance::flattening);

/// The drawing's bounding box, of its curves and not of their control points. mm as drawn.
Box bounds(const Artwork& artwork);

}  // namespace sagitta
