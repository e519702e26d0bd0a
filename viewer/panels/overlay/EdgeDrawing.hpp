#pragma once

/// One long edge of the board as it is seen from beside it: slot ends, side dots, binding, roll or bevel, glue face.

#include <vector>

#include "overlay/Figures.hpp"
#include "overlay/LongSheet.hpp"

namespace sagitta::viewer {

std::vector<Figure> edge_figures(const PreparedBoard& board, const EdgeView& edge, const NeckReading* neck,
                                 const Manner& manner);
LongExtent edge_extent(const PreparedBoard& board, const EdgeView& edge);
void draw_edge(const LongSheet& sheet, const EdgeView& edge);

}  // namespace sagitta::viewer
