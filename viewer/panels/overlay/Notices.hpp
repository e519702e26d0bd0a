#pragma once

/// Notices over the board's picture, where the eye is: what failed, until it is read; and why the picture is of an
/// earlier board.

#include "jobs/Results.hpp"
#include "requests/Request.hpp"
#include "view/View.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// One below the other from the top of the picture, each with a button for what to do. `low` and `size`: the picture's
/// rectangle in the window.
Requests draw_notices(Ui& ui, View& view, const Behind& behind, ImVec2 low, ImVec2 size);

}  // namespace sagitta::viewer
