#pragma once

/// The list of strips for lines, as CSV and JSON.

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "frets/LineList.hpp"

namespace sagitta {

/// Columns fret, material, length, thickness, height; mm. The last row is the total length. See LinePiece.
std::string line_csv(const std::vector<LinePiece>& list);

/// {total, pieces: [..]} with the columns of the CSV as keys, mm.
nlohmann::ordered_json line_json(const std::vector<LinePiece>& list);

}  // namespace sagitta
