#pragma once

/// The export's page once the folder is written, or why it was not.

#include "dialogs/SendingPage.hpp"
#include "requests/Request.hpp"

namespace sagitta::viewer {

/// What came of it; where it went well, what the folder holds, and the ways to it.
Requests draw_sent(const SendingPage& page);

}  // namespace sagitta::viewer
