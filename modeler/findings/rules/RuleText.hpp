#pragma once

/// A rule of the catalogue in words.

#include <string>

#include "rules/Rule.hpp"

namespace sagitta {

/// "at least 0.3 mm".
std::string limit_text(const Rule& rule);

/// Two lines: "stop: thin-edge: what it measures, at least 2.5 mm (source)", and what ignoring it costs.
std::string rule_text(const Rule& rule);

}  // namespace sagitta
