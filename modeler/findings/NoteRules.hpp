#pragma once

/// Findings that are worth knowing.

#include "findings/Rule.hpp"

namespace sagitta {

inline constexpr Rule note_rules[] = {
    {"unusual-marker", Severity::note, Bar::most, 0, "frets", "marker from the nearest usual fret", practice,
     "a player looks for the note at the wrong fret"},
    {"octave-unmarked", Severity::note, Bar::most, 0, "frets", "octave from the nearest mark", practice,
     "a player loses the octave"},
    {"marker-off-centre", Severity::note, Bar::most, 0.1, "mm", "marker from the middle of its space", practice,
     "the row of markers looks crooked"},
    {"slot-cutter-narrow", Severity::note, Bar::most, 0.03, "mm", "slot's width less the slot cutter's cut", practice,
     "slots cut in one pass are too tight"},
    {"outline-into-bed", Severity::note, Bar::least, 0.1, "mm", "tape under the blank where the outline is cut",
     practice, "the bed of the machine is cut"},
    {"operation-without-setup", Severity::note, Bar::most, 0, "operations", "operations that no set-up does",
     "key setups.operations", "a cut is forgotten"},
    {"no-fall-away", Severity::note, Bar::most, 0, "frets", "frets over the body without fall-away", practice,
     "a hump at the body joint is levelled after gluing"},
    {"few-pins", Severity::note, Bar::least, 2, "pins", "locating pins", practice,
     "the board slides in the glue-up and overhangs"},
    {"glue-in-channel", Severity::note, Bar::most, 0, "mm", "channel under the board", practice,
     "the rod is stuck or rattles"},
    {"tang-nipped", Severity::note, Bar::most, 0, "mm", "tang to nip from the finished edge",
     "key binding.width, slots.edge_left", "the fret does not go down at its ends"},
    {"corner-rounded", Severity::note, Bar::most, 0.25, "mm", "corner that the cutter does not reach", practice,
     "pieces drawn with sharp corners look soft"},
    {"radius-ridges", Severity::note, Bar::most, 0.02, "mm", "ridges left by the radius cutter", practice,
     "an hour more of sanding, and a radius that is sanded away"},
    {"strings-close", Severity::note, Bar::least, 6, "mm", "between two strings at the nut", practice,
     "fingers touch the next string"},
    {"placement-sensitive", Severity::note, Bar::most, 1, "cents", "pitch error of 0.1 mm at the last fret", practice,
     "small errors of the machine are heard"},
    {"width-moves", Severity::note, Bar::most, 0.3, "mm", "change of width for 4 % moisture", practice,
     "fret ends come out and inlays show gaps"},
    {"length-moves", Severity::note, Bar::most, 0.05, "mm", "change of length for 15 K", practice,
     "pieces press on their pockets, or a composite board is longer in summer"},
    {"zero-shifted", Severity::note, Bar::most, 0, "mm", "machine's zero from the glue face",
     "key setups.z_zero, setups.tape", "every depth is off by the error of that measure"},
    {"saddle-height", Severity::note, Bar::most, 0, "mm", "plane of the fret tops at the saddle", practice,
     "bridge and neck angle do not agree"},
    {"glue-face-elsewhere", Severity::note, Bar::most, 0.01, "mm", "neck's glue face from z = 0, by its file", practice,
     "the neck was compared in the wrong place"},
    {"several-boards", Severity::note, Bar::most, 1, "boards", "boards that the blank holds",
     "key blank.length, blank.width", "wood is wasted"},
    {"board-weight", Severity::note, Bar::most, 0, "g", "weight of the board", "key materials.density",
     "a wrong measure goes unnoticed"},
    {"unknown-material", Severity::note, Bar::most, 0, "materials", "materials of which nothing is known",
     "key materials", "weights and cautions are guesses"},
    {"caution-dust", Severity::note, Bar::most, 0, "materials", "materials that make dust", practice,
     "harm to lungs, skin and eyes"},
    {"caution-fumes", Severity::note, Bar::most, 0, "pieces", "pieces to glue", practice, "harm to eyes and lungs"},
    {"caution-small-parts", Severity::note, Bar::most, 0, "pieces", "pieces that are cut free", practice,
     "thrown parts"},
    {"caution-species", Severity::note, Bar::most, 0, "materials", "materials that trade rules may cover", practice,
     "board or instrument is held at a border"},
};

}  // namespace sagitta
