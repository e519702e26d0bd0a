#pragma once

/// The section of the board at the cutting plane.

#include "jobs/Results.hpp"
#include "requests/Request.hpp"
#include "view/View.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// The section where the cutting plane stands, to scale, with its figures; or a small part of it much enlarged.
/// Changes no more of the view than whether heights are enlarged.
Requests draw_slice(Ui& ui, View& view, const Results& results, const Manner& manner, ImVec2 low, ImVec2 size);

}  // namespace sagitta::viewer
