#pragma once

/// The families of findings, each in its own file. What they take must be sound, as for findings_of().

#include "findings/Judge.hpp"
#include "plane/Rounded.hpp"

namespace sagitta {

/// What the findings look at.
struct Subject {
  const Board& board;
  const Layout& layout;
  const Surface& surface;
};

void judge_wood(const Subject& subject, Judge& judge);     ///< edges, and what is left under the cuts
void judge_scale(const Subject& subject, Judge& judge);    ///< octave, spacing, measured slots
void judge_wire(const Subject& subject, Judge& judge);     ///< slots against the wire's tang
void judge_inlays(const Subject& subject, Judge& judge);   ///< pieces, their pockets and the walls round them
void judge_markers(const Subject& subject, Judge& judge);  ///< the frets that carry a mark
void judge_strings(const Subject& subject, Judge& judge);  ///< margin to the edge, hump of the surface
void judge_blank(const Subject& subject, Judge& judge);    ///< what the blank has to spare
void judge_neck(const Subject& subject, Judge& judge);     ///< the board against the neck
void judge_cutters(const Subject& subject, Judge& judge);  ///< what the cutters can do

/// "inlay 2 at fret 7".
std::string inlay_name(const Marker& marker);
/// The fix that makes the board wider by `by` at x, in the form that the board's width is written in.
std::optional<Fix> widened(const Subject& subject, double x, double by, const Judge& judge);
/// "inlays[1].depth".
std::string inlay_key(const Marker& marker, const std::string& key);
/// Height above the glue face of the slot's floor under a point.
double slot_floor(const Subject& subject, Point p);

}  // namespace sagitta
