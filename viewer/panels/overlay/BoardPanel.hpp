#pragma once

/// The board's picture with its marks and grips.

#include "overlay/PictureState.hpp"
#include "requests/Request.hpp"

namespace sagitta::viewer {

/// What the board panel shows behind its marks.
struct BoardPicture {
  ImTextureID texture = nullptr;
  float width = 0, height = 0;  ///< pixels
  float plan = 0;               ///< height of the plan above it; 0: there is none
};

/// Height of the row of buttons above the picture, pixels.
float board_bar_height(const Ui& ui);
/// The middle: the board under the hand, with its dimensions, the cutting plane, measurements and the compared board's
/// list.
Requests draw_board(HandState state, ImVec2 low, ImVec2 size, const BoardPicture& picture);

}  // namespace sagitta::viewer
