#pragma once

/// The slotting template: the board from above at 1:1 over as many sheets as it needs.

#include <string>
#include <vector>

#include "board/Board.hpp"
#include "drawing/Drawing.hpp"
#include "layout/Layout.hpp"
#include "paper/PdfBook.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// How far neighbouring sheets show the same stretch of the board. mm.
inline constexpr double template_overlap = 15;

/// A sheet of the template: the part of the board that it shows and where that part lies on the paper. mm.
struct TemplateSheet {
  int column = 0, row = 0;
  Box part;     ///< in the board's frame
  Point shift;  ///< from the board's frame to the paper's, lower left corner zero
};

/// All sheets, row by row from the lower edge, each from the nut to the heel; never none.
std::vector<TemplateSheet> template_sheets(const Layout& layout, const Paper& paper);

/// Where the check scales begin on every sheet: the lower left end of the horizontal one, and of the vertical one; 100
/// mm is drawn from there, and 4 in beside it.
struct CheckScales {
  Point along, up;
};
CheckScales check_scales(const Paper& paper);

/// Both check scales, 100 mm and 4 in, both ways.
void draw_check_scales(PdfBook& book, const Paper& paper);

/// Crosses where a sheet overlaps the next one, at the same places of the board on both.
void mark_overlap(PdfBook& book, const TemplateSheet& sheet, const TemplateSheet& next);

/// What a sheet is, its place among the sheets, and how to print it, in the lower right corner.
void draw_sheet_foot(PdfBook& book, const Paper& paper, const std::string& head, const std::string& place);

/// A page a sheet: outline, slot middles with their numbers and their distance from the nut, nut seat, pockets, centre
/// line; crosses that lie over each other where sheets overlap; check scales of 100 mm and 4 in both ways. `drawing` is
/// the board's (drawing_of).
PdfBook template_book(const PreparedBoard& ready, const Drawing& drawing, const Paper& paper);

}  // namespace sagitta
