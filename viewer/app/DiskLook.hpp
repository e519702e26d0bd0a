#pragma once

/// Looks at the disk while the window rests: the board's file and its drawings.

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// When the next one is due, of the frame's clock; far away where there is nothing to look at.
double next_look(const Desk& desk);
/// Looks at what is due. True when something was changed by somebody else, and the window is to say so.
bool look_at_disk(Desk& desk);

}  // namespace sagitta::viewer
