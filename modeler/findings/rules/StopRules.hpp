#pragma once

/// Findings for which the board, the neck or the intonation is lost, costliest first.

#include "rules/Rule.hpp"

namespace sagitta {

inline constexpr Rule stop_rules[] = {
    {"octave-off", Severity::stop, Bar::most, 0.1, "mm", "octave fret from half the scale", practice,
     "the whole instrument is out of tune, and it is found out after stringing"},
    {"slot-out-of-tune", Severity::stop, Bar::most, 5, "cents", "worst measured slot's pitch against the one meant",
     "published: a difference of about 5 cents is just heard", "the board is lost: every note at that fret is false"},
    {"board-narrower-than-neck", Severity::stop, Bar::least, 0, "mm", "board's width less the neck's",
     "key neck.nut_width, neck.body_width, neck.trim", "the finished neck must be cut and finished again"},
    {"neck-outside-board", Severity::stop, Bar::most, 0.02, "mm", "neck's side beyond the board's, by the neck's file",
     "key neck.file, neck.trim", "the finished neck must be cut and finished again"},
    {"neck-into-board", Severity::stop, Bar::most, 0.1, "mm3", "neck in the board's place, by the neck's file",
     "key neck.file", "the board does not go down on the neck"},
    {"last-fret-past-limit", Severity::stop, Bar::most, 0, "mm", "last fret beyond the limit", "key neck.limit",
     "the board does not fit the instrument, and the last fret hangs in the air"},
    {"heel-past-limit", Severity::stop, Bar::most, 0, "mm", "body end beyond the limit", "key neck.limit",
     "the glued board must be sawn off where the last frets are"},
    {"wood-behind-last-slot", Severity::stop, Bar::least, 0.3, "mm",
     "wood between the last slot and the body end, at its thinnest", practice,
     "the strip behind the last fret breaks off, at the latest when the fret is pressed in"},
    {"inlay-sanded-through", Severity::stop, Bar::least, 0, "mm", "least of a piece left under the radius",
     "key inlays.depth", "the piece and its pocket are lost, and often the board"},
    {"thin-between-cuts", Severity::stop, Bar::least, 0.3, "mm",
     "wood between a floor cut from above and the ceiling of a cut or a pin from below", "key cuts.depth, pins.depth",
     "the skin of wood breaks when the second of the two is cut, and with it the rim round it"},
    {"colour-lost", Severity::stop, Bar::least, 1, "pieces", "pieces of a drawn colour",
     "key cutters.diameter, inlays.clearance", "a colour of the drawing is missing from the finished board"},
    {"slot-too-shallow", Severity::stop, Bar::least, 0, "mm", "least depth of a slot less the tang's",
     "key wire.tang_depth", "the frets stand proud at their ends, and the slots must be sawn again by hand"},
    {"side-dots-in-binding", Severity::stop, Bar::above, 0, "mm", "side dots' depth in the wood behind the binding",
     "key side_dots.depth, binding.width", "the holes are not in the wood: the binding takes all of their depth"},
    {"crowns-meet", Severity::stop, Bar::least, 0, "mm", "between the crowns of two frets", "key wire.crown_width",
     "the board cannot be fretted"},
    {"cutter-too-short", Severity::stop, Bar::least, 0, "mm", "cutting length less the depth of the cut",
     "key cutters.cutting_length", "the cutter burns and breaks, and takes the board with it"},
    {"slot-cutter-too-wide", Severity::stop, Bar::most, 0.01, "mm", "slot cutter's cut less the slot's width", practice,
     "no fret holds in its slot: all slots must be filled and cut again"},
};

}  // namespace sagitta
