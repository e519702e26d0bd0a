#pragma once

/// A drawing taken into the board as artwork.

#include <filesystem>
#include <optional>

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// Lets a drawing in as artwork, as one step: for the inlay `desk.forms.placing`, which keeps its place and size, or as
/// a new one at `place` (else in the space of the twelfth fret), as large as it is drawn; where the drawing does not
/// give its size, the row for it is led to. It is copied beside the board when it lies elsewhere, each of its colours
/// in a material. Says on the status line what happened, and why when it could not be.
bool place_drawing(Desk& desk, const std::filesystem::path& path, const std::optional<Point>& place = std::nullopt);

/// The file's name from the board's folder, copied there when it lies elsewhere and nothing else has its name there; an
/// unsaved board's files lie in a folder of the window's own. "", with the reason on screen, when it cannot be had.
std::string beside_board(Desk& desk, const std::filesystem::path& path);

}  // namespace sagitta::viewer
