#pragma once

/// The families of findings about inlays, their drawings and sheets, side dots and pins.

#include "rules/Judge.hpp"
#include "rules/Subject.hpp"

namespace sagitta {

void judge_inlays(const Subject& subject, Judge& judge);    ///< pieces, their pockets, corners and the walls round them
void judge_chips(const Subject& subject, Judge& judge);     ///< measured chips, and what covers them
void judge_holes(const Subject& subject, Judge& judge);     ///< side dots and pins
void judge_drawings(const Subject& subject, Judge& judge);  ///< what the cutters make of drawings
void judge_sheets(const Subject& subject, Judge& judge);    ///< pieces against the sheets that they are cut from

}  // namespace sagitta
