#pragma once

/// A table on PDF pages.

#include <string>
#include <vector>

#include "paper/PdfFlow.hpp"

namespace sagitta {

/// Rows below a line of headings; as many cells in each.
struct PaperTable {
  std::vector<std::string> heads;
  std::vector<std::vector<std::string>> rows;
  std::string written;  ///< the head of a column that is filled in by hand: a line stands in it
};

/// A block for the headings and one for each row, over `width` mm at most. Columns of figures are flush right; the
/// widest column of words is broken into lines where the table would be too wide. The headings stand again where a
/// column of the page begins with a row.
std::vector<FlowBlock> table_blocks(PdfBook& ruler, double width, const PaperTable& table);

/// The same rows in two or three parts side by side, as many as `width` mm have room for and no part is shorter than
/// six rows.
PaperTable folded(PdfBook& ruler, double width, const PaperTable& table);

/// Boxes to tick, each with its words, in as many columns as the words leave room for, one block for some rows of them.
std::vector<FlowBlock> tick_blocks(PdfBook& ruler, double width, const std::vector<std::string>& ticks);

}  // namespace sagitta
