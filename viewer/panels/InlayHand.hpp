#pragma once

/// Inlays in the hand: moved along the board by the drawing itself, turned and sized by the grips of the frame around
/// it. `low` is the picture's corner in the window. With Shift nothing snaps.

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// Whether the pointer is on a piece of the chosen inlay: then it can be dragged, and the hand knows it.
bool takes_inlay(Desk& desk, ImVec2 low);
/// Moves the inlay with the pointer; near the middle of its space, or the centre line, it snaps there.
void drag_inlay(Desk& desk, ImVec2 low, Edit how);

/// Whether the pointer is on a grip of the frame: then the hand holds it.
bool takes_grip(Desk& desk, ImVec2 low);
/// Turns or sizes the inlay with the pointer, once that has moved far enough to mean it.
void drag_grip(Desk& desk, ImVec2 low, Edit how);

}  // namespace sagitta::viewer
