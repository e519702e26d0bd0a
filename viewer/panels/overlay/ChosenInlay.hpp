#pragma once

/// The piece of an inlay that is chosen, to be worked at on the board.

#include <optional>

#include "overlay/PictureState.hpp"
#include "widgets/FieldRow.hpp"

namespace sagitta::viewer {

/// Chooses an inlay: its piece nearest to that place, else the one chosen last, else its first.
void choose_inlay(View& view, const Board& board, const Results& results, int inlay,
                  std::optional<Point> near = std::nullopt);
/// Chooses what a hand has just taken up in the column of decisions.
void choose_from_rows(FieldRows& rows, View& view, const Board& board, const Results& results);

/// Whether a piece is chosen and its decisions are open: it is in the hand then.
bool has_chosen(const View& view, const Board& board);

/// The chosen piece's frame as the document has it, a step ahead of the picture. Nothing while none is chosen, while
/// the board cannot be built, and where hands have nothing to do with it: from the side and from below, before its
/// pocket is cut, while measuring.
std::optional<InlayFrame> chosen_frame(const PictureState& state);

}  // namespace sagitta::viewer
