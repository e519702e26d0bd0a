#pragma once

/// Where the neck's file was found to carry the board.

#include "decisions/ChecksPanel.hpp"

namespace sagitta::viewer {

/// The place of the glue face in the neck's file, how well the board's edges lie on it and how sure that is, and a
/// button that turns the neck end for end. Nothing where no neck was read.
void draw_neck_found(const CheckState& state);

}  // namespace sagitta::viewer
