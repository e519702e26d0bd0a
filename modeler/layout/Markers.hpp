#pragma once

/// Inlay markers in the fret spaces, dots in the bass edge, and pins.

#include <string>

#include "layout/Layout.hpp"

namespace sagitta {

/// Places of all inlays' pieces: midway between the slots' middles on the centre line, pairs spread across, shifts
/// added. Adds faults for spaces that the board does not have and for spaces named twice.
std::vector<Marker> place_markers(const Board& board, const Layout& layout, Faults& faults);

/// Holes in the edges that side_dots.edge names: the bass edge is that at negative y. Adds faults for the same reasons,
/// and for holes that leave the straight edge or come out on the far side. The layout must have its edges.
std::vector<SideDot> place_side_dots(const Board& board, const Layout& layout, Faults& faults);

std::vector<Pin> place_pins(const Board& board);

}  // namespace sagitta
