#pragma once

/// The list of commands with its search.

#include "requests/Offer.hpp"
#include "requests/Request.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// What is typed into the list of commands, and the line that the keyboard is on.
struct CommandSearch {
  std::string words;
  int chosen = 0;
};

/// The searchable list of commands.
Requests draw_command_list(Ui& ui, CommandSearch& search, const Offer& offer);

/// Commands whose title, group or key holds every word of the search, in order.
std::vector<const OfferedCommand*> search_commands(const Offer& offer, const std::string& words);

}  // namespace sagitta::viewer
