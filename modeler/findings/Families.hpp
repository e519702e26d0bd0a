#pragma once

/// The families of findings, each in its own file. What they take must be sound, as for findings_of().

#include "findings/Judge.hpp"
#include "findings/LetPiece.hpp"
#include "polygon/BoxIndex.hpp"

namespace sagitta {

/// What the findings look at.
struct Subject {
  PreparedBoard prepared;             ///< whole
  const NeckReading* neck = nullptr;  ///< null: not looked at
  std::vector<LetPiece> let{};        ///< every piece in its pocket, in the order of the board's inlays
  BoxIndex let_places{};              ///< boxes of their pockets
};

void judge_wood(const Subject& subject, Judge& judge);      ///< edges, and what is left under the cuts
void judge_scale(const Subject& subject, Judge& judge);     ///< octave, spacing
void judge_measured(const Subject& subject, Judge& judge);  ///< measured slots, and how much a slot's place matters
void judge_wire(const Subject& subject, Judge& judge);      ///< slots against the wire's tang
void judge_inlays(const Subject& subject, Judge& judge);    ///< pieces, their pockets, corners and the walls round them
void judge_markers(const Subject& subject, Judge& judge);   ///< the frets that carry a mark
void judge_strings(const Subject& subject, Judge& judge);   ///< margin to the edge, hump of the surface
void judge_blank(const Subject& subject, Judge& judge);     ///< what the blank has to spare
void judge_neck(const Subject& subject, Judge& judge);      ///< the board against the neck
void judge_cutters(const Subject& subject, Judge& judge);   ///< what the cutters can do
void judge_ridges(const Subject& subject, Judge& judge);    ///< what the radius cutter leaves on the surface
void judge_order(const Subject& subject, Judge& judge);     ///< order of work, set-ups and their zeros
void judge_holes(const Subject& subject, Judge& judge);     ///< side dots and pins
void judge_neck_file(const Subject& subject, Judge& judge);  ///< the board against the neck's STEP file
void judge_channel(const Subject& subject, Judge& judge);    ///< the neck's channel
void judge_drawings(const Subject& subject, Judge& judge);   ///< what the cutters make of drawings
void judge_sheets(const Subject& subject, Judge& judge);     ///< pieces against the sheets that they are cut from
void judge_movement(const Subject& subject, Judge& judge);   ///< moisture and heat
void judge_cautions(const Subject& subject, Judge& judge);   ///< what belongs to these materials and operations

/// "inlay 2 at fret 7".
std::string inlay_name(const Marker& marker);
/// The fix that makes the board wider by `by` at x, in the form that the board's width is written in.
std::optional<Fix> widened(const Subject& subject, double x, double by, const Judge& judge);
/// Height above the glue face of the slot's floor under a point.
double slot_floor(const Subject& subject, Point p);

}  // namespace sagitta
