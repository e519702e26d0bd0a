#pragma once

/// The rows of an inlay that is made from a drawing.

#include "jobs/Results.hpp"
#include "requests/Request.hpp"
#include "widgets/FieldRow.hpp"

namespace sagitta::viewer {

/// Below an inlay made from a drawing: for each colour in it the material that it is cut from, what does not match any
/// more with a button to mend it, and a button to choose another drawing. Changes the draft and says how far the edit
/// is.
Edit draw_artwork_rows(Ui& ui, const Results& results, Board& draft, std::size_t index, Requests& asked);

/// The button below an inlay that mends the first colour of its drawing without a material, or the first material
/// without a colour; "" where they match, and for an inlay that is made from no drawing that was read.
std::string mending_button(const Results& results, const Board& board, std::size_t index);

/// On a board that names its sheets, a colour's material needs one to be cut from: adds a usual one where it has none.
void need_sheet(Board& board, const std::string& material, double thickness);

}  // namespace sagitta::viewer
