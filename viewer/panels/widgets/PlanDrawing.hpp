#pragma once

/// The board from above as a small drawing of lines: outline, frets, strings, inlays. Made from the layout alone, so
/// that it is there before any solid is.

#include <imgui.h>

#include <vector>

#include "inlay/Inlays.hpp"
#include "layout/Layout.hpp"
#include "widgets/Theme.hpp"

namespace sagitta::viewer {

/// From the board's x and y, mm, to the window, pixels: nut to the left, bass side below, as in the picture from above.
struct PlanFrame {
  ImVec2 origin;     ///< where x = 0, y = 0 lands
  float scale = 1;   ///< pixels per mm
  ImVec2 low, high;  ///< the drawing's corners in the window

  ImVec2 at(Point p) const {
    return {origin.x + static_cast<float>(p.x) * scale, origin.y - static_cast<float>(p.y) * scale};
  }
  Point place(ImVec2 pixel) const {
    return {static_cast<double>((pixel.x - origin.x) / scale), static_cast<double>((origin.y - pixel.y) / scale)};
  }
};

/// The whole board as large as it goes into the rectangle, in its middle.
PlanFrame plan_frame(const Layout& layout, ImVec2 low, ImVec2 high);

/// What is picked out of the drawing.
struct PlanMarks {
  FeatureId named;                 ///< a slot or an inlay, drawn in the accent colour
  const Inlays* inlays = nullptr;  ///< as they are fitted; without, drawings are told by a frame
  std::optional<double> cut;       ///< x of the cutting plane
  std::vector<Point> finding;      ///< the place of the marked finding
};

/// The lines that tell one board from another: outline, slots, outlines of the inlay pieces. mm; closed ones
/// end where they begin.
std::vector<std::vector<Point>> telling_lines(const Layout& layout, const Inlays* inlays);

void draw_plan(ImDrawList* paint, const Theme& theme, const Board& board, const Layout& layout, const PlanFrame& frame,
               const PlanMarks& marks = {});

}  // namespace sagitta::viewer
