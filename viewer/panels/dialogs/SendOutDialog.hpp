#pragma once

/// The dialog of the export.

#include "dialogs/SendingPage.hpp"
#include "requests/Request.hpp"

namespace sagitta::viewer {

/// The export's page: what is written, how it prints, where it goes; while it is written, how far; then the outcome.
Requests draw_send_out(const SendingPage& page);

}  // namespace sagitta::viewer
