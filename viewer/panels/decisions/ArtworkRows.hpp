#pragma once

/// The rows of an inlay that is made from a drawing.

#include "jobs/Results.hpp"
#include "requests/Request.hpp"
#include "widgets/FieldRow.hpp"

namespace sagitta::viewer {

/// Below an inlay made from a drawing: a button to choose the drawing, and for each colour in it the material that it
/// is cut from. Changes the draft and says how far the edit is.
Edit draw_artwork_rows(Ui& ui, const Results& results, Board& draft, std::size_t index, Requests& asked);

/// On a board that names its sheets, a colour's material needs one to be cut from: adds a usual one where it has none.
void need_sheet(Board& board, const std::string& material, double thickness);

}  // namespace sagitta::viewer
