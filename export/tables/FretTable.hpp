#pragma once

/// The table of frets as JSON and CSV.

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "prepared/Drawn.hpp"

namespace sagitta {

/// The fret table as JSON: an array with one object a fret, from fret 0 (the nut line) to the last:
/// {fret, cents, from_nut, to_next, to_saddle, bass: [x, y], treble: [x, y]}, mm in the board's frame. On a board whose
/// outer strings have two scales the three distances are {bass, treble}. The last to_next is null.
nlohmann::ordered_json fret_json(const Layout& layout);

/// The same as comma-separated values with a heading line; mm, to 0.0001.
std::string fret_csv(const Layout& layout);

/// The same for reading, in the board's own units: inches to 0.0001, millimetres to 0.001.
std::string fret_text(const Drawn& drawn);

}  // namespace sagitta
