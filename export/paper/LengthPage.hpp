#pragma once

/// The page of the shop drawing with the section along the board.

#include "paper/PdfBook.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// Adds the page: the section along the centre line with its heights stretched, what is left under the deepest trough,
/// and a list of all troughs.
void add_length_page(PdfBook& book, const PreparedBoard& ready, const Paper& paper);

}  // namespace sagitta
