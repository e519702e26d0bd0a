#pragma once

/// Findings for which hours are lost or the board is weaker than is usual, costliest first.

#include "findings/Rule.hpp"

namespace sagitta {

inline constexpr Rule look_rules[] = {
    {"slot-misplaced", Severity::look, Bar::most, 0.1, "mm", "worst measured slot from its place", practice,
     "that fret plays out of tune, and the slot must be filled and cut again"},
    {"inlay-too-thin", Severity::look, Bar::least, 0.3, "mm", "least of a piece left under the radius", practice,
     "the piece turns translucent or breaks at its rim"},
    {"inlay-on-slot", Severity::look, Bar::least, 0, "mm", "between a pocket and a slot", "key slots.width",
     "the piece is cut through and the fret holds badly beside it"},
    {"thin-wall-at-slot", Severity::look, Bar::least, 1, "mm", "wood between a pocket and a slot", practice,
     "the wall breaks out when the fret is pressed in"},
    {"thin-wall-at-edge", Severity::look, Bar::least, 1.5, "mm", "wood between a pocket and the edge", practice,
     "the wall breaks out when the outline is cut or the edge is rounded"},
    {"pocket-too-deep", Severity::look, Bar::least, 0.05, "mm", "piece proud of the surface before sanding", practice,
     "the piece lies under the surface and must be bedded again"},
    {"thin-under-slot", Severity::look, Bar::least, 1.5, "mm", "wood under a slot", practice,
     "the board breaks at the slot when it is handled or fretted"},
    {"thin-under-pocket", Severity::look, Bar::least, 1.5, "mm", "wood under a pocket", practice,
     "the floor gives way or glue comes through"},
    {"thin-under-nut", Severity::look, Bar::least, 1.5, "mm", "wood under the nut's seat", practice,
     "the strip behind the nut breaks off"},
    {"thin-edge", Severity::look, Bar::least, 2.5, "mm", "height of the edge", practice,
     "side dots have no room, fret ends lift, and the board feels thin"},
    {"blank-short", Severity::look, Bar::least, 6, "mm", "spare blank beyond an end", practice,
     "the blank cannot be clamped, or the cutter meets a clamp"},
    {"blank-narrow", Severity::look, Bar::least, 6, "mm", "spare blank beside a side", practice,
     "the blank cannot be clamped, or the outline runs off it"},
    {"blank-thin", Severity::look, Bar::least, 0.2, "mm", "spare blank above board and sanding", practice,
     "patches of the top stay uncut"},
    {"slot-too-tight", Severity::look, Bar::least, 0.02, "mm", "slot's width less the tang's", practice,
     "the frets bend the board backwards and chip the slots"},
    {"slot-too-loose", Severity::look, Bar::most, 0.12, "mm", "slot's width less the tang's", practice,
     "the frets lift out again"},
    {"narrow-fret-space", Severity::look, Bar::least, 4, "mm", "between the crowns of two frets", practice,
     "the highest frets cannot be played"},
    {"string-near-edge", Severity::look, Bar::least, 2.5, "mm", "outer string's middle to the edge", practice,
     "the outer strings slip off the board"},
    {"hump-under-string", Severity::look, Bar::most, 0.05, "mm", "rise of the surface under a string", practice,
     "the string buzzes until the frets are filed down"},
    {"no-cutter", Severity::look, Bar::least, 1, "cutters", "cutters named for an operation", "key cutters.use",
     "nothing can be said of reach and fit for that operation"},
    {"unknown-limit", Severity::look, Bar::most, 0, "names", "limits that belong to no finding", "key limits",
     "the limit that was meant does nothing"},
};

}  // namespace sagitta
