#pragma once

/// A drawing taken into the board as artwork.

#include <filesystem>

#include "app/Desk.hpp"

namespace sagitta::viewer {

/// Lets a drawing in as artwork, for the inlay `desk.forms.placing` or as a new one, as one step: copied beside the
/// board when it lies elsewhere, half as wide as the board there, each of its colours in a material. Says on the status
/// line what happened, and why when it could not be.
bool place_drawing(Desk& desk, const std::filesystem::path& path);

/// The file's name from the board's folder, copied there when it lies elsewhere and nothing else has its name there;
/// "", with the reason on screen, when it cannot be had.
std::string beside_board(Desk& desk, const std::filesystem::path& path);

}  // namespace sagitta::viewer
