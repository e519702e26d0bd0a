#pragma once

/// Drawn outlines as lines and arcs.

#include "artwork/Artwork.hpp"
#include "polygon/Region.hpp"

namespace sagitta {

/// The drawn outlines, `scale` times as large and moved so that `middle` comes to the origin: lines stay lines and arcs
/// stay arcs; a Bezier curve becomes arcs that follow each other with one tangent, within `stray` of it (mm). No arc
/// turns by more than half a turn.
Loops drawn_loops(const std::vector<PathLoop>& outlines, double scale, Point middle, double stray);

}  // namespace sagitta
