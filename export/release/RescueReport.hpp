#pragma once

/// Ways out as text and as JSON.

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "board/BoardFile.hpp"
#include "board/InputPath.hpp"
#include "rescue/Way.hpp"

namespace sagitta {

/// All ways out of what is wrong with the board of a file, best first, its neck's STEP file asked too; none where the
/// file itself cannot be read.
std::vector<Way> ways_out(const BoardFile& file, Outside outside = Outside::refused);

/// One after the other: its number and name, what to do, what it costs, the keys as they stand in a board file.
std::string rescue_text(const std::vector<Way>& ways, const Board& board);
/// {ways: [{name, message, cost, effort, edits: [{key, value}], figures: [{what, value, unit}], findings}]}: lengths in
/// mm, a choice as its word, null for a key that is taken out; findings as check --json has them.
nlohmann::ordered_json rescue_json(const std::vector<Way>& ways);

}  // namespace sagitta
