#pragma once

/// Where the frets stand on the strings: one scale, or one for each outer string.

#include <optional>
#include <string>
#include <vector>

#include "layout/Layout.hpp"
#include "layout/Taper.hpp"

namespace sagitta {

/// "nut line" or "fret 7", for messages.
std::string fret_name(int fret);

/// Scales, spread and fret lines 0 .. last, all but the points on the edges; x of the tongue's end. False, with faults
/// added, when the frets cannot be placed.
bool place_frets(const Board& board, Layout& layout, Faults& faults);

/// Cents of a fret, also of one beyond the last: a list goes on in its last step.
double cents_of(const Scale& scale, int fret);

/// The points where the fret lines meet the edges, or the tongue's side, which must have its place; of a
/// fret on the tongue `bass` is that point too. False, with faults
/// added, when a line misses an edge or the lines stand out of order along one.
bool extend_frets(const Taper& taper, Layout& layout, Faults& faults);

/// Unit vector along a fret line, toward +y; exactly (0, 1) for a square one.
Point direction(const FretLine& fret);

}  // namespace sagitta
