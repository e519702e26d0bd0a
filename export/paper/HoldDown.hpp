#pragma once

/// The blank from above as it lies on the machine: centre lines, clamps, what is cut, dimensions, the zero. mm of
/// paper.

#include "drawing/Drawing.hpp"
#include "paper/PdfBook.hpp"

namespace sagitta {

/// Room for the dimensions to the left of the blank and below it.
inline constexpr double hold_down_side = 14, hold_down_foot = 17;

/// A set-up's drawing (see setup_drawing), x of the nut line in its frame, and the unit of its dimensions.
struct HoldDown {
  Drawing drawing;
  double nut = 0;
  Units units = Units::mm;
};

/// Paints it with the middle of the blank at `centre`.
void paint_hold_down(PdfBook& book, const HoldDown& hold_down, double factor, Point centre);

/// A cross in a circle: where the machine's zero is set.
void mark_zero(PdfBook& book, Point at, double arm = 4);

}  // namespace sagitta
