#pragma once

/// The dialogs that hold nothing of their own between frames. What stands inside the frame that the app opens for them.

#include "document/Document.hpp"
#include "document/OtherVersions.hpp"
#include "document/Settings.hpp"
#include "jobs/Results.hpp"
#include "requests/Offer.hpp"
#include "requests/Request.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

Requests draw_way(Ui& ui, Settings& settings, const Offer& offer);  ///< the first-run page
Requests draw_comfort(Ui& ui, Settings& settings, Camera& camera);  ///< text size, colours, units
Requests draw_unsaved(Ui& ui, const std::string& title);            ///< the document's title
Requests draw_left_over(Ui& ui, const Recovered& left_over);        ///< a recovery copy was found
/// The file was changed by another program.
Requests draw_elsewhere(Ui& ui, const Document& document, const Elsewhere& elsewhere, const Manner& manner);
/// The pieces as they are laid out on their sheets.
Requests draw_sheets(Ui& ui, const Results& results, const Manner& manner);

}  // namespace sagitta::viewer
