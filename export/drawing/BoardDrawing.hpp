#pragma once

/// Everything that is cut from a board, and the blank it is cut from, as one drawing.

#include <set>
#include <string>

#include "drawing/InlayOutlines.hpp"
#include "drawing/JobPart.hpp"
#include "drawing/Paper.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

struct DrawingOptions {
  bool dowels = false;
  Paper paper = *paper_named("A4");   ///< that PDFs are printed on
  JobPart part = {};                  ///< what of the job the drawings are of
  std::set<std::string> setups = {};  ///< folders of the set-ups that get files; empty: all
};

/// Everything that is cut and selected, and the blank it is cut from, in the board's frame; the page is the board's
/// box. The layers: pocket, piece-MATERIAL, radius-area, slot-middle, slot-outline, nut-seat, outline, tabs, binding,
/// side-dots, pins, centre-line, blank-centre, blank, dowels, clamps.
Drawing drawing_of(const PreparedBoard& ready, const InlayOutlines& inlays, const DrawingOptions& options = {});

}  // namespace sagitta
