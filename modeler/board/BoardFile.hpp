#pragma once

/// Reading a board file: everything that is wrong with it is found at once, and nothing in it is silently ignored.

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "board/Board.hpp"
#include "board/InputPath.hpp"
#include "board/Problem.hpp"

namespace sagitta {

/// Where a key or a table stands. Lines and columns are 1-based, columns in code points.
struct Place {
  std::string file;
  int line = 1, column = 1;          ///< of the value; of a table, its header
  int key_line = 1, key_column = 1;  ///< of the key
  int level = 0;                     ///< 0: the file itself, 1: its base, 2: that one's base ...
  friend bool operator==(const Place&, const Place&) = default;
};

/// By dotted key: "scale", "scale.length", "inlays[2]", "inlays[2].frets", "inlays[2].frets[0]",
/// "materials.NAME.density". Indices count from 0 in the order of the file. Only what the file (or its base) says has a
/// place.
using Places = std::map<std::string, Place, std::less<>>;

struct BoardFile {
  Board board;  ///< what could be read; sound when there are no problems
  std::vector<Problem> problems;
  Places places;
  std::string file;                    ///< its name, as problems carry it
  std::vector<std::string> read_from;  ///< every file that it was read from: itself, its base, that one's ..
  bool sound() const { return problems.empty(); }
};

/// Reads a board file. Relative paths in it, `base` among them, start from its folder. A syntax error, a repeated key
/// or a text that cannot be had stops the reading and is the one problem. `outside`: whether a base may lie outside the
/// board's folder.
BoardFile read_board(const std::string& path, Outside outside = Outside::refused);

/// Reads a text as if it were the file of this name in this folder.
BoardFile read_board_text(std::string_view text, const std::string& file_name, const std::string& folder,
                          Outside outside = Outside::refused);

/// Gives the faults that later steps found their places: that of the key; if the file does not give the key, its
/// table's header; else 1:1. A fault without a hint whose length makes better sense in the other unit gets that hint.
std::vector<Problem> locate(const BoardFile& file, const Faults& faults);

}  // namespace sagitta
