#pragma once

/// The board from above with its main dimensions, on a page of the shop drawing. Lengths in mm of paper.

#include "drawing/Drawing.hpp"
#include "paper/PdfFigures.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// Room that the plan's dimensions take: at both ends of the board, over it, and below it.
inline constexpr double plan_side = 13, plan_above = 17, plan_below = 19;

class PlanView {
 public:
  /// The middle of the board's length lies at `centre`.
  PlanView(PdfBook& book, const PreparedBoard& ready, DrawingScale scale, Point centre);

  void paint(const Drawing& drawing);
  /// Nut to last fret, last fret to the body end, the whole, and what lies behind the nut line.
  void dimension_lengths();
  /// At the nut line, fret 12, the joint and the body end, over binding and square to the centre line.
  void dimension_widths();

 private:
  Point at(Point p) const { return origin_ + scale_.factor * p; }
  void draw(const Drawing& drawing, const char* name, Pen pen);
  void width_at_fret(int fret, const std::string& name);

  PdfBook& book_;
  const PreparedBoard& ready_;
  const Board& board_;
  const Layout& layout_;
  DrawingScale scale_;
  Point origin_;
  double named_to_ = 0;  ///< how far to the right the last width's words reach
  bool any_named_ = false;
};

}  // namespace sagitta
