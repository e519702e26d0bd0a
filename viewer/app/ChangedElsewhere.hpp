#pragma once

/// The document's file was changed by somebody else: an editor, or a second window. It is never overwritten unasked.

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// Looks at the document's file, at most once a second and only as far as its size and time differ, and opens the
/// choice when somebody else changed it.
void watch_file(Desk& desk);

/// Opens the choice if the file was changed. Otherwise false.
bool is_changed_elsewhere(Desk& desk);

}  // namespace sagitta::viewer
