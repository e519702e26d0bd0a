#pragma once

/// Findings that are worth knowing.

#include "findings/Rule.hpp"

namespace sagitta {

inline constexpr Rule note_rules[] = {
    {"unusual-marker", Severity::note, Bar::most, 0, "frets", "marker from the nearest usual fret", practice,
     "a player looks for the note at the wrong fret"},
};

}  // namespace sagitta
