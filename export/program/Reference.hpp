#pragma once

/// What the program knows of keys, findings and presets, as JSON for other programs.

#include <nlohmann/json_fwd.hpp>
#include <string_view>
#include <vector>

namespace sagitta {

/// [{key, table, unit, allowed, default, meaning}] of the keys that `only` stands for, as keys_text() takes it; `key`
/// is dotted, `allowed` and `default` are words and may be empty.
nlohmann::ordered_json keys_json(std::string_view only);

/// [{name, severity, measures, limit, unit, bar, source, cost}]; `bar`: "at-least", "more-than", "at-most". `only`: one
/// finding's name; empty: all. Limits that are lengths are in mm.
nlohmann::ordered_json catalogue_json(std::string_view only);

/// [{name, summary, files}]; `files`: the board file and the drawings that `sagitta new --to` writes.
nlohmann::ordered_json presets_json();

}  // namespace sagitta
