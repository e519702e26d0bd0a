#pragma once

/// Pockets of true lines and arcs about pieces of the same. Lengths in mm.

#include "inlay/Meetings.hpp"
#include "plane/Cancel.hpp"

namespace sagitta {

/// A pocket and the polygons that stand for it, within `tolerance::fine_chords`.
struct PartPocket {
  Loops outlines;
  Region polygons;
  Region grown_piece;  ///< the piece grown by the clearance; empty: the pocket is that, moved out piece for piece
};

/// The piece's outlines moved out by the clearance: line for line and arc for arc where that can be, so that the gap is
/// the clearance exactly. Where the moved outline would meet itself it is cut there and refitted, with no outer corner
/// sharper than `least_radius`. `polygons` stand for the piece, within `tolerance::fine_chords`.
PartPocket part_pocket(const Loops& piece, const Region& polygons, double clearance, double least_radius,
                       const Cancel& cancel);

/// All parts' pockets as one set of outlines. Those that touch no other stay as they are. The walls of wood between
/// pockets that meet are taken away, and skins thinner than two snaps do not stand: the plan could not carry them.
Loops run_together(const std::vector<Island>& islands, const std::vector<PartMeeting>& meetings, const IslandCut& cut,
                   const Cancel& cancel);

}  // namespace sagitta
