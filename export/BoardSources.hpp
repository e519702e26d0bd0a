#pragma once

/// The files that a board is read with, its drawings and its neck's model, as copies that lie in a folder made of it.

#include <map>
#include <string>

#include "board/Board.hpp"

namespace sagitta {

/// Below the folder; what a manifest calls such a file.
inline constexpr const char* source_folder = "sources";
inline constexpr const char* source_kind = "source";

struct BoardSources {
  std::map<std::string, std::string> copies;  ///< bytes by name below the folder: "sources/reeds.svg"
  /// The board with the names by which it finds the copies when source_folder is its folder: the names it has, but for
  /// files that lie outside of the board's folder.
  Board board;
};

/// Reads them from where the board's own folder says. A neck's file that is no STEP file, or cannot be read, is not
/// copied: the board is judged without it. Throws FolderError for a drawing that can no longer be read.
BoardSources sources_of(const Board& board);

}  // namespace sagitta
