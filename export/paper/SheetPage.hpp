#pragma once

/// A sheet of inlay material on paper: what lies beside the machine while its pieces are cut.

#include "drawing/Drawing.hpp"
#include "inlay/Nesting.hpp"
#include "paper/PdfBook.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// The sheet from above with its numbered pieces, clamps, centre lines and zero; below it its notes in the board's
/// units. `drawing` is the sheet's own, see sheet_drawing.
PdfBook sheet_book(const PreparedBoard& ready, const NestedSheet& sheet, const Drawing& drawing, const Paper& paper);

}  // namespace sagitta
