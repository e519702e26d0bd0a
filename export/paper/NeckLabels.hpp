#pragma once

/// Words on the neck's sheet at 1:1 that keep off its lines and off each other. Lengths in mm, in the board's frame.

#include <string>
#include <vector>

#include "neck/NeckPlan.hpp"
#include "paper/PdfBook.hpp"

namespace sagitta {

struct NeckLabel {
  std::string text;
  Point at;  ///< its baseline's left end
  Box box;   ///< that its letters fill
};

/// Names of pins, rod channel and deep cuts. `ruler` measures the letters.
std::vector<NeckLabel> neck_labels(PdfBook& ruler, const Board& board, const NeckPlan& plan);

}  // namespace sagitta
