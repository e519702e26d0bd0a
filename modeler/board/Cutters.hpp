#pragma once

/// What the cutters of a board are used for and how wide they cut.

#include <optional>

#include "board/Board.hpp"

namespace sagitta {

bool has_use(const Cutter& cutter, CutterUse use);
/// Width of the cut, mm: as measured, else diameter + runout.
double cut_width(const Cutter& cutter);
/// The widest and the narrowest cut of the cutters for a use, mm; none when no cutter is named for it.
std::optional<double> widest_cut(const Board& board, CutterUse use);
std::optional<double> narrowest_cut(const Board& board, CutterUse use);

}  // namespace sagitta
