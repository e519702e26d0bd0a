#pragma once

/// The board drawn along its length below its picture: the side view and the views of both edges.

#include "jobs/Results.hpp"
#include "requests/Request.hpp"
#include "view/View.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// The drawing that the view asks for, with its figures. Changes no more of the view than which string is told of, and
/// whether heights are enlarged.
Requests draw_lengthwise(Ui& ui, View& view, const Results& results, const Manner& manner, ImVec2 low, ImVec2 size);

}  // namespace sagitta::viewer
