#pragma once

/// What the shading and the curves over the board's picture mean, in its lower left corner.

#include "overlay/PictureState.hpp"
#include "widgets/Labels.hpp"

namespace sagitta::viewer {

/// `height`: of the picture, pixels. Labels are kept off the legends.
void draw_legends(const PictureState& state, float height, Labels& labels);

}  // namespace sagitta::viewer
