#pragma once

/// Inlays in the hand: moved along the board by the drawing itself, turned and sized by the grips of the frame around
/// it. With Shift nothing snaps.

#include "overlay/PictureState.hpp"

namespace sagitta::viewer {

/// Whether the pointer is on a piece of the chosen inlay: then it can be dragged, and the hand knows it.
bool takes_inlay(const HandState& at);
/// Moves the inlay with the pointer; near the middle of its space, or the centre line, it snaps there.
void drag_inlay(const HandState& at, Edit how);

/// Whether the pointer is on a grip of the frame: then the hand holds it.
bool takes_grip(const HandState& at);
/// Turns or sizes the inlay with the pointer, once that has moved far enough to mean it.
void drag_grip(const HandState& at, Edit how);

}  // namespace sagitta::viewer
