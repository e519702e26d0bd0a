#pragma once

/// The bar of commands at the top and the status line.

#include "document/Document.hpp"
#include "jobs/Results.hpp"
#include "requests/Offer.hpp"
#include "requests/Request.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

float top_bar_height(const Ui& ui);
float status_height(const Ui& ui);
/// The commands used all day, by name with their keys on hover, and the board's name.
Requests draw_top_bar(Ui& ui, const Document& document, const Offer& offer, ImVec2 low, ImVec2 size);
/// The last line: what happened, and what the background is at.
Requests draw_status(Ui& ui, const std::string& message, const Progress& working, const SendingState& sending,
                     ImVec2 low, ImVec2 size);

}  // namespace sagitta::viewer
