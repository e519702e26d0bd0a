#pragma once

/// The page of the ways out of what was measured.

#include <memory>

#include "document/Document.hpp"
#include "jobs/WaysOut.hpp"
#include "requests/Request.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// The ways, best first, each with what it costs, what changes and a button that makes its changes as one step. Asks
/// for the ways of the document's board; `found` may be of an earlier one, or null.
Requests draw_rescue(Ui& ui, Document& document, const std::shared_ptr<const FoundWays>& found, const Manner& manner);

}  // namespace sagitta::viewer
