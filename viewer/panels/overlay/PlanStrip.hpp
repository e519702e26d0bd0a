#pragma once

/// The whole board from above, in a strip over its picture: what is selected in one is selected in the other.

#include "overlay/PictureState.hpp"
#include "widgets/PlanDrawing.hpp"

namespace sagitta::viewer {

/// Height of the strip over a picture with so much room below the bar, pixels; 0 where the picture needs it all.
float plan_strip_height(const Ui& ui, float room);
/// How the board lies in the strip whose corners these are.
PlanFrame plan_strip_frame(const Ui& ui, const Layout& layout, ImVec2 low, ImVec2 high);
/// `low` and `size`: its rectangle in the window.
void draw_plan_strip(const HandState& state, ImVec2 low, ImVec2 size);

}  // namespace sagitta::viewer
