#pragma once

/// The board from the side with one string over it: relief, action, saddle, body and findings about heights.

#include <optional>
#include <vector>

#include "neck/HeightChain.hpp"
#include "overlay/Figures.hpp"
#include "overlay/LongSheet.hpp"

namespace sagitta::viewer {

/// Strings from the bass side as a list of choices: "string 6, bass".
std::vector<std::string> string_names(const Layout& layout);

/// Relief, action, saddle, angle and joint as the height chain has them.
std::vector<Figure> side_figures(const PreparedBoard& board, const std::optional<HeightChain>& chain,
                                 const Manner& manner);

/// What must be in sight: all of it, or `magnified` what lies between frets and string.
LongExtent side_extent(const PreparedBoard& board, const std::optional<HeightChain>& chain, int string, bool magnified);

/// Between the sheet's corners the drawing; `below` it has room for the heights over the frets, pixels.
void draw_side(const LongSheet& sheet, const std::optional<HeightChain>& chain, int string);
/// Rows of heights over the frets, under the drawing; returns how many rows there are. `paint` false: only counted.
int draw_fret_heights(const LongSheet& sheet, const HeightChain& chain, int string, float y, bool paint);

}  // namespace sagitta::viewer
