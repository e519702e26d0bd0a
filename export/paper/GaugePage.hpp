#pragma once

/// Radius gauges and string strips on paper, in true size, to be cut out.

#include "paper/PdfBook.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// As many pages as they need; a check rule on each. What is wider than the paper is left out: it is in the DXF.
PdfBook gauge_book(const PreparedBoard& ready, const Paper& paper);

}  // namespace sagitta
