#pragma once

#include <filesystem>

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// Whether the file is a drawing by its ending: .svg or .dxf.
bool is_drawing(const std::filesystem::path& path);

/// Lets a drawing in as artwork, for the inlay `desk.placing` or as a new one, as one step: copied beside the board
/// when it lies elsewhere, half as wide as the board there, each of its colours in a material. Says on the status line
/// what happened, and why when it could not be.
bool place_drawing(Desk& desk, const std::filesystem::path& path);

/// On a board that names its sheets, a colour's material needs one to be cut from: adds a usual one where it has none.
void need_sheet(Board& board, const std::string& material, double thickness);

}  // namespace sagitta::viewer
