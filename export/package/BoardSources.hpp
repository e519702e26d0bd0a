#pragma once

/// The files that a board is read with, its drawings and its neck's model, as copies that lie in a folder made of it.

#include <cstddef>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "board/BoardFile.hpp"

namespace sagitta {

/// Below the folder; what a manifest calls such a file.
inline constexpr const char* source_folder = "sources";
inline constexpr const char* source_kind = "source";
/// No such file is larger. Bytes.
inline constexpr std::size_t largest_source = 64U << 20;

struct BoardSources {
  std::map<std::string, std::string> copies;  ///< bytes by name below the folder: "sources/reeds.svg"
  /// The board with the names by which it finds the copies when source_folder is its folder: the names it has, but for
  /// files that lie outside of the board's folder.
  Board board;
};

/// Every file that the board is made from, as a path: the board file, its bases, its drawings and its neck's model. The
/// folder that a board is sent into may hold none of them.
std::vector<std::filesystem::path> inputs_of(const BoardFile& file);

/// Reads them from where the board's own folder says. A neck's file that is no STEP file, or cannot be read, is not
/// copied: the board is judged without it. Throws FolderError for a drawing that can no longer be read.
BoardSources sources_of(const Board& board);

}  // namespace sagitta
