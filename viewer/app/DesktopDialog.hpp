#pragma once

/// Where the desktop has a dialog for files of its own, it takes the place of ours.

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// Once a frame: puts a dialog for files that is wanted to the desktop, and takes its answer.
void follow_desktop_dialog(Desk& desk);

}  // namespace sagitta::viewer
