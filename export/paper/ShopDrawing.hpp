#pragma once

/// The printed drawings of the board: dimensions and sections, and the inlay pieces by number.

#include <string>

#include "drawing/InlayOutlines.hpp"
#include "paper/PdfBook.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// One sheet for the wall: the board from above with its main dimensions, and its sections at nut, octave and heel with
/// radius, thickness, slot depth and what is left below the slots; dimensions in the board's own units.
/// `drawing` is the board's (drawing_of).
PdfBook shop_book(const PreparedBoard& ready, const Drawing& drawing, const Paper& paper);

/// Each piece of inlay by number on the board, and a list of all of them, on further sheets where one is too small.
PdfBook inlay_book(const PreparedBoard& ready, const InlayOutlines& inlays, const Paper& paper);

}  // namespace sagitta
