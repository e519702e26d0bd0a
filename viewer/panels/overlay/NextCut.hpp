#pragma once

/// The card above the stages: whether the next cut may be made.

#include "document/Document.hpp"
#include "jobs/Results.hpp"
#include "requests/Request.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// Released, released with changed numbers, or stopped, with the numbers or the reason; buttons to say that it is cut
/// and to see the ways out. One line of the panel.
Requests draw_next_cut(Ui& ui, Document& document, const Results& results, const Manner& manner);
float next_cut_height(const Ui& ui);

}  // namespace sagitta::viewer
