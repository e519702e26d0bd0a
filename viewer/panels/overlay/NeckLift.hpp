#pragma once

/// The board lifted off its neck by a hand.

#include "overlay/PictureState.hpp"
#include "widgets/Labels.hpp"

namespace sagitta::viewer {

/// The grip in the window, beside the board's edge that is nearer to the eye; nothing while no neck is shown.
std::optional<ImVec2> lift_grip(const PictureState& state);
/// The grip, and how far the board is lifted.
void draw_lift(const PictureState& state, Labels& labels);
/// Lifts the board by what the pointer moved along the picture of the upright direction since the hand began.
void drag_lift(const HandState& state, ImVec2 now);

/// Why the neck that is wanted is not shown, or that what is shown is a sketch; "" for neither.
std::string neck_shown_words(const PictureState& state);

}  // namespace sagitta::viewer
