#include "drawing/SheetDrawing.hpp"

#include <cmath>
#include <cstdio>

#include "board/Length.hpp"
#include "drawing/ResolvedSetup.hpp"
#include "layout/Measure.hpp"
#include "text/Measures.hpp"

namespace sagitta {

std::string sheet_folder(const NestedSheet& sheet) {
  char ending[24];
  std::snprintf(ending, sizeof ending, "-%02d", sheet.sheet + 1);
  return plain_name("sheet-" + sheet.material) + ending;
}

Drawing sheet_drawing(const Board& board, const NestedSheet& sheet) {
  Drawing drawing{shown_name(board) + ", sheet of " + sheet.material,
                  {"Sheet of " + sheet.material + ", " + plain(sheet.length) + " x " + plain(sheet.width) + " x " +
                       shown_length(sheet.thickness, Units::mm) + "; zero at its lower left corner.",
                   "True size, millimetres; the pieces as they lie on the sheet, seen from above."},
                  {{0, 0}, {sheet.length, sheet.width}},
                  {}};
  Layer outlines{plain_name("piece-" + sheet.material), "#b07020", {}};
  std::string turned;
  for (const NestedPiece& nested : sheet.pieces) {
    for (const Loop& loop : nested.outline) outlines.figures.push_back({nested.name, loop, true, nested.ellipse});
    if (nested.turn != 0)
      turned += (turned.empty() ? "" : ", ") + nested.name + " by " +
                plain(std::round(nested.turn * 180 / std::numbers::pi)) + " degrees";
  }
  if (!turned.empty()) drawing.notes.push_back("Turned against the board: " + turned + ".");
  drawing.layers = {outlines,
                    {"blank-centre",
                     "#c0c0c0",
                     {{"middle of the sheet, along", {line(sheet.along.a, sheet.along.b)}, false},
                      {"middle of the sheet, across", {line(sheet.across.a, sheet.across.b)}, false}}},
                    {"blank", "#806040", {{"sheet", rectangle({0, 0}, {sheet.length, sheet.width}), true}}},
                    zero_layer()};
  return drawing;
}

}  // namespace sagitta
