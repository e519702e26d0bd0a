#pragma once

/// The pieces of inlay material, numbered as they lie from the nut to the heel. Lengths in mm.

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "inlay/Inlays.hpp"

namespace sagitta {

struct ListedPiece {
  int number = 0;  ///< 1, 2, ...: what the inlay drawing shows
  InlayPiece piece;
  Box box;  ///< of the piece where it lies
};

/// In order of place: along the board, then across.
std::vector<ListedPiece> piece_list(const std::vector<InlayPiece>& pieces);

/// The same with their numbers, in the order of materials and of the numbers in the pieces' names.
std::vector<ListedPiece> pieces_by_name(const std::vector<InlayPiece>& pieces);

/// One row a piece: number, piece, material, fret, x, y (middle of its box), along, across (sizes of its box),
/// pocket_depth, thickness; mm.
std::string piece_csv(const std::vector<ListedPiece>& pieces);
/// [{number, piece, material, fret, x, y, along, across, pocket_depth, thickness}], mm.
nlohmann::ordered_json piece_json(const std::vector<ListedPiece>& pieces);

}  // namespace sagitta
