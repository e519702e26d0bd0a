#pragma once

/// Where the strings lie, as CSV and JSON: for the slots of nut and saddle.

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// Columns string (1 is the bass string), course, gauge (empty where none is given), at_nut and at_saddle (from the
/// bass string's middle, across the board); mm.
std::string string_csv(const PreparedBoard& ready);

/// The same rows as a list, with the columns as keys; mm.
nlohmann::ordered_json string_json(const PreparedBoard& ready);

}  // namespace sagitta
