#pragma once

/// The board that this one is compared with, as lines over the picture of this one.

#include "overlay/PictureState.hpp"

namespace sagitta::viewer {

/// Its outline, slots and inlay outlines, on this board's playing surface.
void draw_other_board(const PictureState& state);

}  // namespace sagitta::viewer
