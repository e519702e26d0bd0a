#pragma once

/// The drawing of a sheet of inlay material with the pieces that are cut from it.

#include "drawing/Drawing.hpp"
#include "inlay/Nesting.hpp"

namespace sagitta {

/// A sheet of inlay material with the pieces that are cut from it, a set-up of its own: zero at the sheet's lower left
/// corner. Layers: piece-MATERIAL, blank (the sheet), blank-centre, zero. The page is the sheet.
Drawing sheet_drawing(const Board& board, const NestedSheet& sheet);

/// "sheet-pearl-01": the sheet's folder below setups/, by its place among the board's sheets.
std::string sheet_folder(const NestedSheet& sheet);

}  // namespace sagitta
