#pragma once

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// Below an inlay made from a drawing: a button to choose the drawing, and for each colour in it the material that it
/// is cut from. Changes the draft and says how far the edit is.
Edit draw_artwork_rows(Desk& desk, Board& draft, std::size_t index);

}  // namespace sagitta::viewer
