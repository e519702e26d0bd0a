#pragma once

/// The tongue: its side, its end, and the heel end beside it.

#include <optional>

#include "layout/HeelEnd.hpp"
#include "layout/Layout.hpp"
#include "layout/Taper.hpp"

namespace sagitta {

/// The tongue's bass side from the heel end to the tongue's end, whose x `layout.tongue` has already. Empty, with
/// faults added, when it has no place beside the main board. The layout is right-handed.
std::optional<TonguePlace> place_tongue(const Board& board, const Layout& layout, const Taper& taper, Faults& faults);

/// Where the fret line meets the tongue's bass side.
Point on_tongue_side(const TonguePlace& tongue, const FretLine& fret);

/// The board's end with its tongue, from the edge at negative y to the one at positive y: the heel end, the tongue's
/// side, its end. The corner between heel end and tongue is sharp. Empty, with faults added, when a corner does not
/// fit.
std::optional<HeelEnd> heel_with_tongue(const Board& board, const Layout& layout, const Taper& taper, NutCorners nut,
                                        Faults& faults);

/// Adds a fault for the first slot of the tongue that would run into the main board.
void check_tongue_slots(const Board& board, const Layout& layout, Faults& faults);

/// The point on the tongue's middle line midway between the slots of frets `space` - 1 and `space`, and the tongue's
/// width there, across.
struct TongueMiddle {
  Point at;
  double width = 0;
};
TongueMiddle tongue_middle(const Layout& layout, int space);

}  // namespace sagitta
