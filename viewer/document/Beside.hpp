#pragma once

/// The files that a board file names and that lie beside it: the drawings of its inlays and its neck's STEP file.

#include <filesystem>
#include <string>
#include <vector>

#include "board/Board.hpp"
#include "input/Presets.hpp"

namespace sagitta::viewer {

/// Whether the file is a drawing by its ending: .svg or .dxf.
bool is_drawing(const std::filesystem::path& path);

/// Their paths as the board file has them, each once.
std::vector<std::string> files_beside(const Board& board);

/// Copies those that lie in the board's folder into another; one that is there already is left alone. Returns "" or
/// which could not be taken along and why.
std::string take_along(const Board& board, const std::filesystem::path& to);

/// Writes a preset's drawings into a folder, over those of last time. Returns "" or what went wrong.
std::string lay_out_drawings(const Preset& preset, const std::filesystem::path& folder);

}  // namespace sagitta::viewer
