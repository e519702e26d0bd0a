#pragma once

/// Where the panels lie in the window.

#include "view/View.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// Rectangles of the panels, pixels.
struct WindowPlaces {
  ImVec2 bar, bar_size, left, left_size, tabs, tabs_size, board, board_size, strip, strip_size, right, right_size,
      status, status_size;
  bool narrow = false;  ///< decisions and checks share the left column
  float picture_height = 0, plan_height = 0;
};

/// In a window of this width and height; `whole_picture`: the board's picture has all of it.
WindowPlaces window_places(const Ui& ui, const View& view, float w, float h, bool whole_picture);

}  // namespace sagitta::viewer
