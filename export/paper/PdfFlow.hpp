#pragma once

/// Blocks of a document set one below the other, in columns, over as many pages as they need. Lengths in mm of paper.

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "paper/PdfBook.hpp"

namespace sagitta {

/// What stays together on a page.
struct FlowBlock {
  double height = 0;                                                     ///< of what is painted
  std::function<void(PdfBook&, Point corner, double width)> paint = {};  ///< from its upper left corner
  double before = 0;                              ///< free above it, but not where a column begins
  bool with_next = false;                         ///< never the last of a column
  bool wide = false;                              ///< over all columns
  std::shared_ptr<const FlowBlock> heading = {};  ///< painted again above it where a column begins with it
  std::string part = {};                          ///< what the head of a page that begins with it says
};

/// The paper and what of it blocks may take.
struct FlowArea {
  Paper paper;
  Box box;
  double least_column = 120, gutter = 9;
  double gaps = 1;  ///< times the room before each block

  int columns() const;
  double column() const;  ///< width of one
};

/// Paints a page's head: its number, of how many, and the part of its first block.
using PageHead = std::function<void(PdfBook&, int page, int pages, const std::string& part)>;

/// How far each page would be filled: the part of its columns above their lowest blocks, 0 to 1.
std::vector<double> page_fills(const FlowArea& area, const std::vector<FlowBlock>& blocks);

/// The blocks in their order, down the columns, from left to right, page after page. Where a wide block or the end
/// follows, columns are as even as they can be. A block that is higher than the area runs over its lower edge.
void print_flow(PdfBook& book, const FlowArea& area, const std::vector<FlowBlock>& blocks, const PageHead& head);

}  // namespace sagitta
