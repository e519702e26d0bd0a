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
/// The drawings among them: all but the neck's file.
std::vector<std::string> drawings_of(const Board& board);

/// The first of them that cannot come along into a folder because another file has its name there; "" where there is
/// none.
std::string name_taken_in(const Board& board, const std::filesystem::path& to);
/// Copies those that lie in the board's folder into another; one that is there already is left alone. Returns "" or
/// which could not be taken along and why.
std::string take_along(const Board& board, const std::filesystem::path& to);

/// Both can be read and hold the same bytes.
bool same_bytes(const std::filesystem::path& a, const std::filesystem::path& b);

/// Writes a preset's drawings into a folder, over those of last time. Returns "" or what went wrong.
std::string lay_out_drawings(const Preset& preset, const std::filesystem::path& folder);

}  // namespace sagitta::viewer
