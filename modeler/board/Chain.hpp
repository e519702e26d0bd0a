#pragma once

/// A board file merged with its base, its base's base, and so on.

#include <string>
#include <string_view>
#include <vector>

#include "board/Board.hpp"
#include "board/InputPath.hpp"
#include "board/Node.hpp"

namespace sagitta {

/// Bases may stand on bases up to this depth.
inline constexpr int deepest_base = 16;

struct ChainFile {
  std::string name;    ///< as problems carry it
  std::string folder;  ///< its relative paths start from here
  Units units = Units::mm;
};

struct Chain {
  Node root;                     ///< merged; each node's level is its file's index
  std::vector<ChainFile> files;  ///< the file itself first
  std::vector<Problem> problems;
  bool readable = true;  ///< false: the file itself could not be parsed, the one problem says why
  bool whole = true;     ///< false: a base is missing or unreadable, so that keys may be missing
};

/// `outside`: whether bases may lie outside `folder`.
Chain read_chain(std::string_view text, const std::string& file_name, const std::string& folder, Outside outside);

}  // namespace sagitta
