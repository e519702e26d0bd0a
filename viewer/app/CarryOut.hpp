#pragma once

/// What the panels asked for, done once all of them are drawn.

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// Does all that was asked for, what follows from it too. True when anything was done that may show in the window.
bool carry_out_asked(Desk& desk);

}  // namespace sagitta::viewer
