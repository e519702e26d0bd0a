#pragma once

/// The printed sheet of a set-up.

#include <string>

#include "drawing/ResolvedSetup.hpp"
#include "paper/PdfBook.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// One sheet to lay beside the machine: the blank from above with its zero, what is cut, where clamps may stand, the
/// way from the blank's ends to the nut line; below it the set-up's notes. `drawing` is the set-up's own.
PdfBook setup_book(const PreparedBoard& ready, const ResolvedSetup& setup, const Drawing& drawing, const Paper& paper);

}  // namespace sagitta
