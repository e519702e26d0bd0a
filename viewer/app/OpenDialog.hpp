#pragma once

/// The dialog that is open.

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// Draws the dialog that is open, if any, and hands it what it needs. Escape closes it.
Requests draw_open_dialog(Desk& desk, const Offer& offer);

}  // namespace sagitta::viewer
