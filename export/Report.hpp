#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "board/Problem.hpp"

namespace sagitta {

/// The problems for reading, one after the other: "file:line:column: key: message" and, indented below it, the hint.
/// A problem without a key leaves "key: " out.
std::string problem_text(const std::vector<Problem>& problems);

/// What `check --json` prints: {problems: [{file, line, column, key, message, hint}], findings: []}.
nlohmann::ordered_json check_json(const std::vector<Problem>& problems);

}  // namespace sagitta
