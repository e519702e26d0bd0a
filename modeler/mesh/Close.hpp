#pragma once

/// Points added to arcs where chords would cross the edges beside them.

#include "mesh/EdgePolyline.hpp"

namespace sagitta {

/// Where arcs run close to other edges: every point of another edge that lies between an arc and one of its chords gets
/// a neighbour on the arc, so that chords cross nowhere. `chords_within` is how far chords are from their arcs at most,
/// mm.
void follow_close_neighbours(const Subdivision& map, EdgePolylines& trails, double chords_within);

}  // namespace sagitta
