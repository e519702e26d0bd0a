#pragma once

/// The pieces of inlay material, numbered as they lie from the nut to the heel. Lengths in mm.

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "board/Board.hpp"
#include "export/Drawing.hpp"
#include "layout/Layout.hpp"

namespace sagitta {

struct ListedPiece {
  int number = 0;        ///< 1, 2, ...: what the inlay drawing shows
  std::string name;      ///< "shell-01": material and number within it
  std::string material;
  int fret = 0;
  Figure outline;        ///< where it lies on the board
  double depth = 0;      ///< of its pocket, below the finished surface's middle
  double thickness = 0;  ///< as cut from its sheet
};

/// In order of place: along the board, then across.
std::vector<ListedPiece> piece_list(const Board& board, const Layout& layout);

/// One row a piece: number, piece, material, fret, x, y (middle of its box), along, across (sizes of its box),
/// pocket_depth, thickness; mm.
std::string piece_csv(const std::vector<ListedPiece>& pieces);
/// [{number, piece, material, fret, x, y, along, across, pocket_depth, thickness}], mm.
nlohmann::ordered_json piece_json(const std::vector<ListedPiece>& pieces);

}  // namespace sagitta
