#pragma once

/// The families of findings about frets, their slots and wire, and the strings over them.

#include "rules/Judge.hpp"
#include "rules/Subject.hpp"

namespace sagitta {

void judge_scale(const Subject& subject, Judge& judge);     ///< octave, spacing
void judge_measured(const Subject& subject, Judge& judge);  ///< measured slots, and how much a slot's place matters
void judge_seating(const Subject& subject, Judge& judge);   ///< what frets that are pressed in do to the board
void judge_wire(const Subject& subject, Judge& judge);      ///< slots against the wire's tang
void judge_markers(const Subject& subject, Judge& judge);   ///< the frets that carry a mark
void judge_strings(const Subject& subject, Judge& judge);   ///< margin to the edge, hump of the surface

}  // namespace sagitta
