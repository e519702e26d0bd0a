#pragma once

/// Problems and findings as text and as JSON.

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "board/Problem.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// The problems for reading, one after the other: "file:line:column: key: message" and, indented below it, the hint.
/// A problem without a key leaves "key: " out.
std::string problem_text(const std::vector<Problem>& problems);

/// The findings for reading, one after the other: "stop: name: message" and, indented below it, what ignoring it costs
/// and the suggestion.
std::string finding_text(const std::vector<Finding>& findings, bool colours = false);

/// The same in a line each: "note: name: message".
std::string short_text(const std::vector<Finding>& findings, bool colours = false);

/// The findings as JSON: [{name, code, severity, value, limit, unit, at: [x, y, z], feature, message, suggestion, cost,
/// source, fix: {key, value} or null}]; lengths in mm.
nlohmann::ordered_json findings_json(const std::vector<Finding>& findings);

/// What `check --json` prints: {problems: [{file, line, column, key, message, hint}], findings: as findings_json}.
nlohmann::ordered_json check_json(const std::vector<Problem>& problems, const std::vector<Finding>& findings);

}  // namespace sagitta
